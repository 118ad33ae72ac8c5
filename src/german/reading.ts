import type { ReadingText } from '@/text/reading'
import { tell } from '@/text/told'
import { counted } from './counted'

/** '…, wo der Kopf der Datei weitergehen müsste; …' */
const lacking: ReadingText['lacking'] = {
  header: () => 'der Kopf der Datei weitergehen müsste',
  track: ({ track, bytes }) => `Spur ${track} noch um ${bytes} Bytes weitergehen müsste`,
  part: ({ bytes }) => `ein Teil von ihr noch um ${bytes} Bytes weitergehen müsste`,
  tracks: ({ count }) =>
    `noch ${counted(count, 'Spur', 'Spuren')} folgen ${count === 1 ? 'müsste' : 'müssten'}`,
  data: ({ bytes }) => `ihre Daten noch um ${bytes} Bytes weitergehen müssten`,
  dataPart: () => 'der Teil mit dem Namen „data“ kommen müsste',
}

/** 'Die Datei ist beschädigt: Bei Byte 12 …' */
const damage: ReadingText['damage'] = {
  frameRate: () => 'nennt ihr Kopf eine unbekannte Bildrate',
  shortHeader: () => 'ist ihr Kopf zu kurz',
  format: ({ format }) => `nennt ihr Kopf ein unbekanntes Format (${format})`,
  noQuarter: () => 'gibt ihr Kopf der Viertelnote keine Länge',
  endlessTime: ({ track }) => `endet in Spur ${track} eine Zeitangabe nicht`,
  cutEvent: ({ track }) => `ist in Spur ${track} ein Ereignis abgeschnitten`,
  cutMark: ({ track }) => `ist in Spur ${track} eine Angabe abgeschnitten`,
  cutMessage: ({ track }) => `ist in Spur ${track} eine Nachricht abgeschnitten`,
  alienMessage: ({ track, status }) =>
    `steht in Spur ${track} eine Nachricht (${status}), die keine Datei enthalten darf`,
  loneValue: ({ track }) => `steht in Spur ${track} ein Wert ohne Ereignis`,
  highValue: ({ track }) => `hat in Spur ${track} ein Ereignis einen Wert über 127`,
}

/** 'Die Datei ist beschädigt: In Zeile 12 …' */
const xmlDamage: ReadingText['xmlDamage'] = {
  unknownSign: () => 'steht ein Zeichen (&…;), das XML nicht kennt',
  unclosed: ({ name }) => `endet <${name}> nicht, bevor anderes endet`,
  malformed: ({ message }) => `ist das XML nicht wohlgeformt (der Leser meldet „${message}“)`,
}

/** 'Die gepackte Datei lässt sich nicht öffnen: …' */
const archiveDamage: ReadingText['archiveDamage'] = {
  noContents: () => 'Ihr Inhaltsverzeichnis fehlt',
  cutContents: () => 'Ihr Inhaltsverzeichnis bricht ab',
  brokenContents: () => 'Ihr Inhaltsverzeichnis (META-INF/container.xml) ist beschädigt',
  tooMany: ({ count, most }) =>
    `Sie enthält ${count} Dateien, und höchstens ${most} werden angesehen`,
  namesNone: () => 'Ihr Inhaltsverzeichnis nennt keine Noten',
  namesOutside: () => 'Die Noten, die sie nennt, liegen außerhalb von ihr',
  namesAbsent: ({ name }) => `Die Noten „${name}“, die sie nennt, sind nicht in ihr`,
  namesNoXml: () => 'Was sie als ihre Noten nennt, ist kein XML',
  locked: ({ name }) => `„${name}“ in ihr ist mit einem Kennwort verschlossen`,
  method: ({ name, method }) =>
    `„${name}“ in ihr ist auf ungewöhnliche Weise gepackt (Verfahren ${method})`,
  elsewhere: ({ name }) => `„${name}“ steht nicht dort, wo es stehen sollte`,
  cut: ({ name }) => `„${name}“ in ihr bricht ab`,
  damaged: ({ name }) => `„${name}“ in ihr ist beschädigt`,
}

const ofHand = { right: 'der rechten Hand', left: 'der linken Hand' } as const

const settings: Readonly<Record<string, string>> = {
  time: 'Die Taktart (time)',
  key: 'Die Tonart (key)',
  tempo: 'Das Tempo (tempo)',
  pickup: 'Der Auftakt (pickup)',
}
const setting = (word: string): string => settings[word] ?? `„${word}“`

const typed: ReadingText['typed'] = {
  tooLong: ({ most }) =>
    `Der Text ist zu lang für ein Fragment (mehr als ${figure(most)} Zeichen): auf mehrere verteilen.`,
  newer: () =>
    'Der Text stammt aus einer neueren Fassung dieses Programms: die Seite neu laden, dann ist sie da.',
  noNote: () => 'Es steht noch keine Note darin.',
  openChord: () => 'Der Akkord ist nicht geschlossen: nach seinem letzten Ton ] schreiben.',
  emptyChord: () => 'Der Akkord ist leer: seine Töne zwischen [ und ] schreiben.',
  noSetting: ({ word }) => `„${word}“ ist keines von time, key, tempo, pickup.`,
  lateSetting: ({ word }) => `${setting(word)} muss vor der ersten Note stehen.`,
  doubleSetting: ({ word }) => `${setting(word)} steht schon da.`,
  openSetting: ({ word, example }) => `Nach ${word} muss etwas folgen, wie in ${example}.`,
  longPickup: ({ time }) => `Ein Auftakt ist kürzer als ein ${time}-Takt.`,
  oddPickup: () => 'Ein Auftakt wird in Achteln eines Viertels oder größer gezählt.',
  nothingHeld: () => 'Vor „-“ steht nichts, was gehalten werden könnte.',
  loneLength: () => 'Eine Länge steht gleich nach ihrer Note, wie in C4:1/2.',
  sameKey: ({ one, other }) => `${one} und ${other} sind dieselbe Taste: einmal genügt.`,
  pickupBar: ({ hand, has, wanted }) =>
    `Vor diesem Taktstrich ${ofHand[hand]} stehen ${has} Viertel, und der Auftakt hat ${wanted} Viertel.`,
  bar: ({ hand, has, wanted, time }) =>
    `Dieser Takt ${ofHand[hand]} hat ${has} Viertel, und ein ${time}-Takt fasst ${wanted} Viertel.`,
  noPitch: ({ word }) =>
    `„${word}“ ist kein Tonname: Buchstabe von A bis G, wo nötig # oder b, und die Oktave, wie C4 oder F#5 (das deutsche H heißt hier B, das deutsche B heißt Bb).`,
  beyondPiano: ({ word }) => `„${word}“ liegt außerhalb des Klaviers, das von A0 bis C8 reicht.`,
  noLength: ({ word }) =>
    `„${word}“ ist keine Länge: Viertel als Bruch oder mit Punkt schreiben, wie 1, 1/2 oder 1.5.`,
  oddLength: ({ word }) =>
    `${word} eines Viertels kann hier nicht gezählt werden: Eine Triole ist 1/3, und ein Viertel teilt sich in 2, 3, 4, 5, 6, 7, 8 und weiter bis 32, wo sich diese daraus ergeben.`,
  noTime: ({ word }) => `„${word}“ ist keine Taktart: als 3/4 oder 6/8 schreiben.`,
  noKey: ({ word }) =>
    `„${word}“ ist keine Tonart mit höchstens sieben Kreuzen oder B: als G, Bb oder E minor schreiben (H-Dur heißt hier B, B-Dur heißt Bb).`,
  noTempo: ({ word }) =>
    `„${word}“ ist kein Tempo: Schläge in der Minute schreiben, von 10 bis 400.`,
}

/** 500000 -> '500.000' */
const figure = (n: number): string => n.toLocaleString('de-DE')

const problems: ReadingText['problems'] = {
  empty: () => 'Die Datei ist leer (0 Bytes): noch einmal kopieren oder exportieren.',
  tooLarge: ({ size, most }) =>
    `Die Datei ist ${size} MB groß, und höchstens ${most} MB können gelesen werden: das Stück allein exportieren, ohne Klang.`,
  tooManyEvents: ({ limit }) =>
    `Die Datei enthält mehr als ${figure(limit)} Ereignisse, zu viele für ein Stück: als mehrere kürzere Stücke exportieren.`,
  tooLong: ({ limit }) =>
    `Die letzte Note steht mehr als ${figure(limit)} Takte nach dem Anfang, also muss eine Zeit in der Datei falsch sein: noch einmal exportieren.`,
  notMidi: () =>
    'Das ist kein Standard MIDI File (es beginnt nicht mit „MThd“): das Stück als MIDI-Datei (.mid) exportieren und diese wählen.',
  separateSequences: () =>
    'Diese MIDI-Datei hat Format 2, also getrennte Folgen statt eines Stücks: das Stück in Format 0 oder 1 exportieren.',
  truncated: ({ lacking: what, byte }) =>
    `Die Datei bricht ab: Sie endet bei Byte ${byte}, wo ${tell(lacking, what)}; noch einmal kopieren oder exportieren.`,
  corrupt: ({ damage: what, byte }) =>
    `Die Datei ist beschädigt: Bei Byte ${byte} ${tell(damage, what)}; noch einmal kopieren oder exportieren.`,
  noNotes: () =>
    'In der Datei steht keine einzige Note: eine andere wählen oder das Stück mit seinen Noten exportieren.',
  onlyDrums: () =>
    'Die Datei enthält nur Noten für Schlagzeug (Kanal 10 oder ohne Tonhöhe): eine Datei mit einer Klavierstimme wählen.',
  typed: ({ line, column, flaw }) =>
    `Der Text ist ab Zeile ${line}, Spalte ${column} nicht mehr zu verstehen: ${tell(typed, flaw)}`,
  unknownFormat: () =>
    'Das ist weder ein Standard MIDI File noch MusicXML (es beginnt weder mit „MThd“ noch mit „<“): das Stück als MusicXML (.musicxml, .mxl) oder als MIDI-Datei (.mid) exportieren und diese wählen.',
  unknownLetters: ({ name }) =>
    `Die Datei ist in ${name} geschrieben, was hier nicht gelesen wird: noch einmal in UTF-8 exportieren.`,
  cutXml: ({ line, inside }) =>
    `Die Datei bricht ab: Sie endet in Zeile ${line}${inside && `, innerhalb von <${inside}>`}; noch einmal kopieren oder exportieren.`,
  brokenXml: ({ line, damage: what }) =>
    `Die Datei ist beschädigt: In Zeile ${line} ${tell(xmlDamage, what)}; noch einmal kopieren oder exportieren.`,
  entities: ({ line }) =>
    `Die Datei legt eigene Wörter fest (<!ENTITY>, in Zeile ${line}), was schaden kann und kein MusicXML braucht: das Stück noch einmal exportieren.`,
  tooDeep: ({ line, limit }) =>
    `Die Datei ist kein übliches MusicXML: In Zeile ${line} stehen mehr als ${limit} Elemente ineinander; das Stück noch einmal exportieren.`,
  otherXml: ({ root }) =>
    `Diese XML-Datei enthält <${root}> und keine Noten in MusicXML (<score-partwise>): das Stück als MusicXML exportieren und diese Datei wählen.`,
  brokenArchive: ({ damage: what }) =>
    `Die gepackte Datei lässt sich nicht öffnen: ${tell(archiveDamage, what)}; das Stück noch einmal als .mxl oder .musicxml exportieren.`,
  tooLargeUnpacked: ({ size, most }) =>
    `Die gepackte Datei würde ausgepackt ${size} MB groß, mehr als Noten ihrer Größe oder überhaupt je sind (höchstens ${most} MB): das Stück allein exportieren.`,
  noScoreInArchive: ({ scores }) =>
    scores === 0
      ? 'Die gepackte Datei enthält keine Noten in MusicXML: das Stück als .mxl oder .musicxml exportieren und diese Datei wählen.'
      : `Die gepackte Datei enthält ${scores} Stücke und sagt nicht, welches gemeint ist: auspacken und eines davon wählen.`,
}

const namesOf = (names: readonly string[]): string =>
  names.map((name) => name || 'ohne Namen').join(', ')

const notes = (n: number): string => counted(n, 'Note', 'Noten')

const marks = {
  tempo: 'eine beschädigte Tempoangabe',
  time: 'eine beschädigte Taktangabe',
  key: 'eine beschädigte Vorzeichnung',
} as const

const warnings: ReadingText['warnings'] = {
  partsTaken: ({ taken, left }) =>
    `Aus der Datei genommen: ${namesOf(taken)}; weggelassen: ${namesOf(left)}.`,
  allParts: ({ count }) =>
    `Die Datei hat ${count} Stimmen und keine für Klavier allein; alle sind zusammen genommen.`,
  otherInstruments: ({ names }) =>
    `Stimmen anderer Instrumente sind weggelassen: ${namesOf(names)}.`,
  handsOfParts: ({ count }) =>
    `Die Datei hat ${count} Stimmen; welche Hand was spielt, ist aus der Lage der Noten erschlossen.`,
  unpitched: ({ notes: n }) => `${notes(n)} ohne Tonhöhe weggelassen.`,
  noKey: ({ notes: n }) => `${notes(n)} außerhalb aller Tasten weggelassen.`,
  noLength: ({ notes: n }) => `${notes(n)} ohne Länge weggelassen.`,
  betweenKeys: ({ notes: n }) =>
    `${notes(n)} zwischen zwei Tasten; genommen ist die Taste zum Stammton hin.`,
  rounded: ({ notes: n }) =>
    `${notes(n)} mit Längen, die keine Teilung des Viertels ergibt; gerundet.`,
  backedTooFar: () =>
    'Eine Stimme geht hinter ihren Taktstrich zurück; sie beginnt nun am Taktstrich.',
  unended: ({ notes: n }) =>
    `${notes(n)} ohne Ende in der Datei; mit dem Ende der Spur geschlossen.`,
  drums: ({ notes: n }) => `${notes(n)} auf dem Schlagzeugkanal (10) weggelassen.`,
  impossibleTime: () => 'Eine unmögliche Taktangabe ist weggelassen.',
  frames: () =>
    'Die Datei zählt die Zeit in Filmbildern statt in Schlägen; ihre Takte sind mit 120 Vierteln in der Minute gelegt.',
  damagedMark: ({ track, mark }) => `Spur ${track} hat ${marks[mark]}; sie ist weggelassen.`,
  afterEnd: ({ track, bytes }) =>
    `Spur ${track} hat nach ihrem Ende noch ${bytes} Bytes; sie sind weggelassen.`,
  noEnd: ({ track }) => `Spur ${track} hat kein Zeichen für ihr Ende; alles ist gelesen.`,
  afterTracks: ({ bytes }) => `Nach der letzten Spur sind noch ${bytes} Bytes weggelassen.`,
  moreTracks: ({ announced, found }) =>
    `Die Datei kündigt ${counted(announced, 'Spur', 'Spuren')} an und hat ${found}; alle sind gelesen.`,
  guessedKey: ({ fifths }) => {
    const n = Math.abs(fifths)
    const sign = fifths < 0 ? 'B' : n === 1 ? 'Kreuz' : 'Kreuze'
    const signs = n === 1 ? `ein ${sign} ist` : `${n} ${sign} sind`
    return `Die Datei hat keine Vorzeichnung; ${signs} aus ihren Noten erschlossen.`
  },
  onlyScore: ({ name }) =>
    `Die gepackte Datei hat kein Inhaltsverzeichnis; „${name}“ ist als ihre Noten genommen.`,
  oddLetters: ({ name }) =>
    `Die Buchstaben der Datei sind nicht die von ${name}, wie es hier gelesen wird; Titel und Namen können seltsam aussehen.`,
}

export const reading: ReadingText = {
  lacking,
  damage,
  xmlDamage,
  archiveDamage,
  typed,
  problems,
  warnings,
}
