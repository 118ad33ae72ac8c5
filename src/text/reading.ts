import { plural } from './plural'
import { catalogue } from './text'
import { tell, type Told } from './told'

/** Where a file ends that should go on: '…, where the header should go on; …'. */
const lacking = {
  header: () => 'the header should go on',
  track: ({ track, bytes }: Track & Bytes) => `track ${track} should go on for ${bytes} more bytes`,
  part: ({ bytes }: Bytes) => `a part of it should go on for ${bytes} more bytes`,
  tracks: ({ count }: Count) => `${plural(count, 'more track')} should follow`,
  data: ({ bytes }: Bytes) => `its data should go on for ${bytes} more bytes`,
  dataPart: () => 'the part named “data” should have come',
}

/** What is wrong at a byte of a Standard MIDI File: '…: at byte 12 an event is cut off in track 1; …'. */
const damage = {
  frameRate: () => 'the header gives an unknown frame rate',
  shortHeader: () => 'the header is too short',
  format: ({ format }: { readonly format: number }) =>
    `the header names an unknown format (${format})`,
  noQuarter: () => 'the header gives a quarter note no length',
  endlessTime: ({ track }: Track) => `a time in track ${track} does not end`,
  cutEvent: ({ track }: Track) => `an event is cut off in track ${track}`,
  cutMark: ({ track }: Track) => `a mark is cut off in track ${track}`,
  cutMessage: ({ track }: Track) => `a message is cut off in track ${track}`,
  /** `status` as two hexadecimal digits. */
  alienMessage: ({ track, status }: Track & { readonly status: string }) =>
    `a message (${status}) stands that no file may hold in track ${track}`,
  loneValue: ({ track }: Track) => `a value stands without an event in track ${track}`,
  highValue: ({ track }: Track) => `an event has a value over 127 in track ${track}`,
}

/** What is wrong at a line of an XML file. */
const xmlDamage = {
  unknownSign: () => 'a sign (&…;) is used that XML does not know',
  unclosed: ({ name }: Name) => `<${name}> does not end before something else does`,
  /** `message`: the parser’s own, in English. */
  malformed: ({ message }: { readonly message: string }) =>
    `the XML is not well-formed (${message})`,
}

/** Why a compressed file cannot be opened. */
const archiveDamage = {
  noContents: () => 'its list of contents is missing',
  cutContents: () => 'its list of contents breaks off',
  brokenContents: () => 'its list of contents (META-INF/container.xml) is damaged',
  tooMany: ({ count, most }: Count & { readonly most: number }) =>
    `it holds ${count} files, and at most ${most} are looked at`,
  namesNone: () => 'its list of contents names no score',
  namesOutside: () => 'the score that it names lies outside of it',
  namesAbsent: ({ name }: Name) => `the score “${name}” that it names is not in it`,
  namesNoXml: () => 'what it names as its score is no XML',
  locked: ({ name }: Name) => `“${name}” in it is locked by a password`,
  method: ({ name, method }: Name & { readonly method: number }) =>
    `“${name}” in it is packed in an unusual way (method ${method})`,
  elsewhere: ({ name }: Name) => `“${name}” is not where it should be`,
  cut: ({ name }: Name) => `“${name}” in it is cut short`,
  damaged: ({ name }: Name) => `“${name}” in it is damaged`,
}

/** '2 1/2' -> '2 1/2 quarters', '1/2' -> '1/2 of a quarter'. */
const quarters = (figure: string): string =>
  /^\d+\/\d+$/.test(figure)
    ? `${figure} of a quarter`
    : `${figure} ${figure === '1' ? 'quarter' : 'quarters'}`

/** What is wrong at a place of typed music; its own words and pitch names are the same in all languages. */
const typed = {
  tooLong: ({ most }: { readonly most: number }) =>
    `The text is too long for a fragment (more than ${most} letters): write it as several.`,
  newer: () => 'The text was written by a newer version of this program: reload to get that.',
  noNote: () => 'There is no note in it yet.',
  openChord: () => 'The chord is not closed: write ] after its last pitch.',
  emptyChord: () => 'The chord is empty: write its pitches between [ and ].',
  noSetting: ({ word }: Word) => `“${word}” is none of time, key, tempo, pickup.`,
  lateSetting: ({ word }: Word) => `The ${word} must stand before the first note.`,
  doubleSetting: ({ word }: Word) => `The ${word} stands there already.`,
  openSetting: ({ word, example }: Word & { readonly example: string }) =>
    `Something must follow ${word}, as in ${example}.`,
  longPickup: ({ time }: Time) => `A pickup is shorter than a bar of ${time}.`,
  oddPickup: () => 'A pickup is counted in eighths of a quarter or larger.',
  nothingHeld: () => 'There is nothing before “-” that could be held.',
  loneLength: () => 'A length stands right after its note, as in C4:1/2.',
  sameKey: ({ one, other }: { readonly one: string; readonly other: string }) =>
    `${one} and ${other} are the same key: once is enough.`,
  /** Lengths in quarters: '2', '1/2', '2 1/2'. */
  pickupBar: ({ hand, has, wanted }: Bar) =>
    `Before this bar line the ${hand} hand has ${quarters(has)}, and the pickup is ${quarters(wanted)}.`,
  bar: ({ hand, has, wanted, time }: Bar & Time) =>
    `This bar of the ${hand} hand has ${quarters(has)}, and ${time} holds ${quarters(wanted)}.`,
  noPitch: ({ word }: Word) =>
    `“${word}” is no pitch: write a letter from A to G, # or b where needed, and the octave, as C4 or F#5.`,
  beyondPiano: ({ word }: Word) => `“${word}” is beyond the piano, which goes from A0 to C8.`,
  noLength: ({ word }: Word) =>
    `“${word}” is no length: write quarters as a fraction or a decimal, as 1, 1/2 or 1.5.`,
  oddLength: ({ word }: Word) =>
    `${word} of a quarter cannot be counted here: a triplet is 1/3, and a quarter divides into 2, 3, 4, 5, 6, 7, 8 and on to 32 where these divide it.`,
  noTime: ({ word }: Word) => `“${word}” is no time signature: write it as 3/4 or 6/8.`,
  noKey: ({ word }: Word) =>
    `“${word}” is no key of at most seven sharps or flats: write it as G, Bb or E minor.`,
  noTempo: ({ word }: Word) => `“${word}” is no tempo: write the beats a minute, from 10 to 400.`,
}

/** Why a file cannot be read, in one sentence: what, where, and what to do. Bytes count from 0, lines and columns from 1. */
const problems = {
  empty: () => 'The file is empty (0 bytes): copy or export it again.',
  /** Megabytes. */
  tooLarge: ({ size, most }: Size) =>
    `The file is ${size} MB large and at most ${most} MB can be read: export the piece alone, without sound.`,
  tooManyEvents: ({ limit }: Limit) =>
    `The file holds more than ${limit} events, too many for one piece: export it as shorter pieces.`,
  tooLong: ({ limit }: Limit) =>
    `The last note stands more than ${limit} bars after the beginning, so a time in the file must be wrong: export it again.`,
  notMidi: () =>
    'This is no Standard MIDI File (it does not begin with “MThd”): export the piece as a MIDI file (.mid) and choose that.',
  separateSequences: () =>
    'This MIDI file is of format 2, which holds separate sequences instead of one piece: export the piece as format 0 or 1.',
  truncated: ({ lacking: what, byte }: Byte & { readonly lacking: Told<typeof lacking> }) =>
    `The file is cut short: it ends at byte ${byte}, where ${tell(lacking, what)}; copy or export it again.`,
  corrupt: ({ damage: what, byte }: Byte & { readonly damage: Told<typeof damage> }) =>
    `The file is damaged: at byte ${byte} ${tell(damage, what)}; copy or export it again.`,
  noNotes: () =>
    'The file is without a single note: choose another, or export the piece with its notes.',
  onlyDrums: () =>
    'The file has notes for drums only (channel 10, or without pitch): choose a file with a piano part.',
  typed: ({ line, column, flaw }: Line & Column & { readonly flaw: Told<typeof typed> }) =>
    `The text stops making sense at line ${line}, column ${column}: ${tell(typed, flaw)}`,
  unknownFormat: () =>
    'This is neither a Standard MIDI File nor MusicXML (it begins with neither “MThd” nor “<”): export the piece as MusicXML (.musicxml, .mxl) or as a MIDI file (.mid) and choose that.',
  unknownLetters: ({ name }: Name) =>
    `The file is written in ${name}, which is not read here: export it again in UTF-8.`,
  /** `inside`: the element that does not end, or ''. */
  cutXml: ({ line, inside }: Line & { readonly inside: string }) =>
    `The file is cut short: it ends at line ${line}${inside && `, inside <${inside}>`}; copy or export it again.`,
  brokenXml: ({ line, damage: what }: Line & { readonly damage: Told<typeof xmlDamage> }) =>
    `The file is damaged: at line ${line} ${tell(xmlDamage, what)}; copy or export it again.`,
  entities: ({ line }: Line) =>
    `The file defines words of its own (<!ENTITY>, at line ${line}), which can do harm and which no MusicXML needs: export the piece again.`,
  tooDeep: ({ line, limit }: Line & Limit) =>
    `The file is no usual MusicXML: at line ${line} more than ${limit} elements stand inside each other; export the piece again.`,
  otherXml: ({ root }: { readonly root: string }) =>
    `This XML file holds <${root}> and no score of MusicXML (<score-partwise>): export the piece as MusicXML and choose that.`,
  brokenArchive: ({ damage: what }: { readonly damage: Told<typeof archiveDamage> }) =>
    `The compressed file cannot be opened: ${tell(archiveDamage, what)}; export the piece again as .mxl or .musicxml.`,
  /** Megabytes. */
  tooLargeUnpacked: ({ size, most }: Size) =>
    `The compressed file would become ${size} MB when opened, more than a score of its size or of any size can hold (at most ${most} MB): export the piece alone.`,
  noScoreInArchive: ({ scores }: { readonly scores: number }) =>
    scores === 0
      ? 'The compressed file holds no MusicXML score: export the piece as .mxl or .musicxml and choose that.'
      : `The compressed file holds ${scores} scores and does not say which is meant: unpack it and choose one of them.`,
}

const namesOf = (names: readonly string[]): string =>
  names.map((name) => name || 'unnamed').join(', ')

const marks = { tempo: 'tempo', time: 'time signature', key: 'key signature' } as const

/** What the person should know about what the file holds and the score does not, or not just so. */
const warnings = {
  /** A part without a name is ''. */
  partsTaken: ({ taken, left }: { readonly taken: Names; readonly left: Names }) =>
    `Taken from the file: ${namesOf(taken)}; left out: ${namesOf(left)}.`,
  allParts: ({ count }: Count) =>
    `The file has ${count} parts and none for a piano alone; all are taken together.`,
  otherInstruments: ({ names }: { readonly names: Names }) =>
    `Parts of other instruments left out: ${namesOf(names)}.`,
  handsOfParts: ({ count }: Count) =>
    `The file has ${count} parts; which hand plays what was inferred from how the notes lie.`,
  unpitched: ({ notes }: Notes) => `${plural(notes, 'note')} without pitch left out.`,
  noKey: ({ notes }: Notes) => `${plural(notes, 'note')} outside of all keys left out.`,
  noLength: ({ notes }: Notes) => `${plural(notes, 'note')} without a length left out.`,
  betweenKeys: ({ notes }: Notes) =>
    `${plural(notes, 'note')} between two keys; the one on the natural’s side is taken.`,
  rounded: ({ notes }: Notes) =>
    `${plural(notes, 'note')} with lengths that no division of the quarter holds; rounded.`,
  backedTooFar: () => 'A voice goes back beyond its bar line; it was begun at the bar line.',
  unended: ({ notes }: Notes) =>
    `${plural(notes, 'note')} never ended in the file; closed at the track’s end.`,
  drums: ({ notes }: Notes) => `${plural(notes, 'note')} on the drum channel (10) left out.`,
  impossibleTime: () => 'An impossible time signature was left out.',
  frames: () =>
    'The file counts time in film frames instead of beats; its bars are laid at 120 quarters a minute.',
  damagedMark: ({ track, mark }: Track & { readonly mark: keyof typeof marks }) =>
    `Track ${track} has a damaged ${marks[mark]}; it was left out.`,
  afterEnd: ({ track, bytes }: Track & Bytes) =>
    `Track ${track} has ${bytes} bytes after its end; they were left out.`,
  noEnd: ({ track }: Track) => `Track ${track} has no end mark; all of it was read.`,
  afterTracks: ({ bytes }: Bytes) => `After the last track ${bytes} more bytes were left out.`,
  moreTracks: ({ announced, found }: { readonly announced: number; readonly found: number }) =>
    `The file announces ${announced} tracks but has ${found}; all were read.`,
  /** Sharps above 0, flats below. */
  guessedKey: ({ fifths }: { readonly fifths: number }) => {
    const n = Math.abs(fifths)
    const sign = fifths > 0 ? 'sharp' : 'flat'
    const signs = n === 1 ? `one ${sign} is` : `${n} ${sign}s are`
    return `The file has no key signature; ${signs} inferred from its notes.`
  },
  onlyScore: ({ name }: Name) =>
    `The archive has no list of its contents; “${name}” was taken as the score.`,
  oddLetters: ({ name }: Name) =>
    `The file’s letters are not in ${name} as read here; titles and names may look odd.`,
}

/** What is told of a file that cannot be read, or is odd. */
export const readingText = catalogue('reading', {
  lacking,
  damage,
  xmlDamage,
  archiveDamage,
  typed,
  problems,
  warnings,
})

export type ReadingText = typeof readingText

interface Track {
  readonly track: number
}
interface Byte {
  readonly byte: number
}
interface Bytes {
  readonly bytes: number
}
interface Count {
  readonly count: number
}
interface Name {
  readonly name: string
}
type Names = readonly string[]
interface Word {
  readonly word: string
}
interface Time {
  readonly time: string
}
interface Bar {
  readonly hand: 'right' | 'left'
  readonly has: string
  readonly wanted: string
}
interface Line {
  readonly line: number
}
interface Column {
  readonly column: number
}
interface Limit {
  readonly limit: number
}
interface Size {
  readonly size: number
  readonly most: number
}
interface Notes {
  readonly notes: number
}
