import { decimal } from '@/text/numbers'
import type { SpotsText } from '@/text/spots'
import { counted } from './counted'

const upTo = {
  fifth: 'bis zu einer Quinte',
  sixth: 'bis zu einer Sexte',
  seventh: 'bis zu einer Septime',
  octave: 'bis zu einer Oktave',
  ninth: 'bis zu einer None',
  tenth: 'bis zu einer Dezime',
  eleventh: 'bis zu einer Undezime',
  twelfth: 'bis zu einer Duodezime',
  thirteenth: 'bis zu einer Tredezime',
  fourteenth: 'bis zu einer Quartdezime',
  twoOctaves: 'bis zu zwei Oktaven',
  beyond: 'über mehr als zwei Oktaven',
}

const doubleNotes = {
  thirds: 'Terzen',
  sixths: 'Sexten',
  octaves: 'Oktaven',
  mixed: 'Doppelgriffe',
}

export const spots: SpotsText = {
  title: 'Schwere Stellen',
  looking: 'Sie werden gesucht …',
  reasons: {
    speed: ({ onsetsASecond }) => `schnell: ${decimal(onsetsASecond, 1)} Anschläge in der Sekunde`,
    leap: ({ widest }) => `Sprünge: ${upTo[widest]}`,
    stretch: ({ widest }) => `weite Griffe: ${upTo[widest]}`,
    chords: ({ struck }) =>
      typeof struck === 'number'
        ? `Akkorde mit bis zu ${struck} Tönen in einer Hand`
        : doubleNotes[struck],
    repeats: () => 'Tonwiederholungen',
    trill: () => 'Triller oder Tremoli',
    topography: () => 'schwarze und weiße Tasten im Wechsel',
    fingering: () => 'unbequem für die Finger',
    thumb: () => 'Daumenuntersätze',
    accidentals: () => 'Versetzungszeichen',
    crossing: () => 'die Hände kreuzen sich',
    rhythm: ({ against }) =>
      against ? `${against[0]} gegen ${against[1]}` : 'Rhythmen, die nicht ineinander aufgehen',
  },
  ways: {
    speed: 'Dreier- und Vierergruppen im halben Tempo, in den Rhythmen lang–kurz und kurz–lang',
    leap: 'den Sprung allein: auf den Tasten landen, ohne anzuschlagen, dann anschlagen; schon auf die nächste Stelle schauen',
    stretch:
      'den Akkord langsam arpeggieren und aufhören, sobald die Hand müde wird; einen Ton weglassen, wenn es zu viel ist',
    chords:
      'jede Stimme allein, dann je zwei; die Finger stehen über den Tasten bereit, bevor sie anschlagen',
    repeats:
      'langsam, mit lockerem Handgelenk, Akzente auf jedem zweiten und dritten Ton; einen Fingerwechsel versuchen',
    trill:
      'langsam und gezählt, vier Töne auf einen Schlag, dann acht; mit dem notierten Ton beginnen und enden',
    topography:
      'die Hand langsam zwischen die schwarzen Tasten hinein- und wieder herausführen, ohne das Handgelenk zu drehen',
    fingering:
      'den Fingersatz festlegen und eintragen; Dreiergruppen um die unbequeme Stelle herum',
    thumb: 'den Untersatz allein: zwei Töne davor und zwei danach, den Daumen früh vorbereitet',
    accidentals: 'die Töne benennen; als Akkord greifen, wo die Hand es erlaubt',
    crossing:
      'die Hände einzeln, dann stumm zusammen: welche Hand liegt oben, und welche weicht aus',
    rhythm:
      'mit beiden Händen auf den Klavierdeckel klopfen und die gemeinsame Teilung zählen; dann einen Schlag immer wieder',
  },
  inBeat: (bar, beat, hand) => `Takt ${bar}, Schlag ${beat}, ${hand}`,
  inBar: (bar, from, to, hand) => `Takt ${bar}, Schlag ${from} bis ${to}, ${hand}`,
  overBars: (fromBar, from, toBar, to, hand) =>
    `Takt ${fromBar}, Schlag ${from} bis Takt ${toBar}, Schlag ${to}, ${hand}`,
  aPassage: 'eine Passage',
  byYourWord: 'von Ihnen als schwer genannt',
  played: (flawed, of) =>
    `Aus Ihrem Spiel: hier in mindestens ${flawed} von ${of} Durchgängen fehlerhaft`,
  whole: (about, from, to) =>
    `Im Ganzen etwa ${about}, irgendwo zwischen ${from} und ${to} (nach den schweren Stellen in diesem Tempo, der Zahl der Töne, dem Umfang und den Vorzeichen): ein grober Wert, um Stücke miteinander zu vergleichen, keine Note.`,
  none: 'Nichts ist hier schwerer als das Übrige.',
  limits:
    'Vom Abstufen der Stimmen, von Pedal, Gedächtnis und Nerven weiß ein Programm nichts: Berichtigen Sie die Liste nach dem, was Ihre Hände sagen.',
  buttons: {
    build: 'Zum Aufbau',
    buildShort: 'Aufbau',
    choose: 'Wählen',
    accept: 'Annehmen',
    reject: 'Ablehnen',
    makePassages: 'Daraus Passagen machen',
    takeBack: 'Zurückholen',
  },
  add: (bars) => `${bars} hinzufügen`,
  named: {
    build: (where) => `Zum Aufbau: ${where}`,
    choose: (where) => `Wählen: ${where}`,
    accept: (where) => `Annehmen: ${where}`,
    reject: (where) => `Ablehnen: ${where}`,
    up: (where) => `Nach oben: ${where}`,
    down: (where) => `Nach unten: ${where}`,
    takeBack: (where) => `Zurückholen: ${where}`,
  },
  done: {
    accepted: (where) => `${where}: eine Passage`,
    rejected: (where) => `${where}: abgelehnt, unter der Liste eingeklappt`,
    moved: (where, rank, of) => `${where}: ${rank} von ${of}`,
    added: (bars, hand) => `${bars}, ${hand}: von Ihnen als schwer genannt`,
    passagesMade: (n) => `${counted(n, 'Passage', 'Passagen')} gemacht`,
  },
  rejected: (n) => counted(n, 'abgelehnte Stelle', 'abgelehnte Stellen'),
  carried: (carried, dropped) => {
    const all = counted(carried + dropped, 'schwere Stelle', 'schwere Stellen')
    const hold = carried === 1 ? 'gilt' : 'gelten'
    const lost = dropped === 1 ? 'entfällt' : 'entfallen'
    const rest = `; ${dropped} ${lost}, weil die meisten Töne in dieser Ausgabe nicht stehen`
    return `Von Ihren Angaben über ${all} ${hold} hier ${carried}${dropped > 0 ? rest : ''}.`
  },
  problems: {
    notLooked: (why) => `Die schweren Stellen konnten nicht gesucht werden: ${why}`,
    unread: (why) => `Ihre Angaben zu schweren Stellen lassen sich nicht lesen: ${why}`,
    unkept: (why) => `Dies gilt nur, bis die Seite geschlossen wird: ${why}`,
  },
}
