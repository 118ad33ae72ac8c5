import { plural } from './plural'
import { catalogue } from './text'
import { tell, type Told } from './told'

interface More {
  readonly more: boolean
}
const by = ({ more }: More): string => (more ? 'more' : 'less')

/** How one fingering differs from another, each in one thing. */
const differences = {
  thumb: (it: More) => `crosses the thumb ${by(it)}`,
  stretch: (it: More) => `stretches ${by(it)}`,
  move: (it: More) => `moves the hand ${by(it)}`,
  weak: (it: More) => `uses the weak fingers ${by(it)}`,
  black: (it: More) => `puts thumb and little finger on black keys ${by(it)}`,
  change: (it: More) => `changes fingers ${by(it)}`,
  close: (it: More) => `draws the fingers together ${by(it)}`,
}

/** The fingers on the lower and the higher key. */
interface Both {
  readonly low: number
  readonly high: number
}

/** A digit that cannot be. */
const impossible = {
  twice: ({ finger }: { readonly finger: number }) => `${finger} on two keys at once`,
  jump: ({ from, to }: { readonly from: number; readonly to: number }) =>
    `${from}, then ${to}: the hand has to jump`,
  tooWide: ({
    low,
    high,
    semitones,
    most,
  }: Both & { readonly semitones: number; readonly most: number }) =>
    `${low} and ${high} over ${semitones} semitones, where they span ${most}`,
  crossed: ({ low, high }: Both) => `${low} and ${high} would have to cross`,
  tooClose: ({ low, high }: Both) => `${low} and ${high} on keys that lie too close for them`,
}

/** From a fifth to an octave and a fifth, by semitones. */
const intervals: Readonly<Record<number, string>> = {
  7: 'a fifth',
  8: 'a minor sixth',
  9: 'a sixth',
  10: 'a minor seventh',
  11: 'a major seventh',
  12: 'an octave',
  13: 'a minor ninth',
  14: 'a ninth',
  15: 'a minor tenth',
  16: 'a tenth',
  17: 'an eleventh',
  18: 'a wide eleventh',
  19: 'a twelfth',
}
const interval = (semitones: number): string => intervals[semitones] ?? `${semitones} semitones`

const wayOut = 'roll it, or give a note to the other hand'

/** What the hand does not reach, whatever the fingers, and what can be done. */
const unreachable = {
  wide: ({ semitones, reach }: { readonly semitones: number; readonly reach: number }) =>
    `the chord spans ${semitones} semitones, more than ${interval(reach)}: ${wayOut}`,
  many: ({ keys }: { readonly keys: number }) =>
    `the chord has ${keys} keys for five fingers: ${wayOut}`,
}

/** Fingering: versions, differences, reach. */
export const fingeringText = catalogue('fingering', {
  title: 'Fingering',
  looking: 'Looking for one …',
  notLooked: (why: string) => `No fingering could be looked for: ${why}`,
  keepDigits: 'Keep the digits that stand',
  propose: <N>(bars: string, hand: string, key: N) => [`Propose one for ${bars}, ${hand} `, key],
  /** Where every note has its digit already. */
  full: 'Every note has its digit here: without “Keep the digits that stand” others are looked for.',
  how: 'Press a note, or go to one with ↓ in the music, then 1 to 5: the digit stands, and the next note of the hand is next. ⌫ takes away, ← and → go on without.',
  notYours: 'A proposal comes from a model of the hand, never from yours.',
  /** Where, and what cannot be or what can be done there. */
  at: (place: string, words: string) => `In ${place}: ${words}.`,

  differences,
  sameCost: 'costs the hand the same',
  /** All hands differ so, or one of them. */
  differ: (words: string) => `it ${words}`,
  handDiffers: (hand: string, words: string) => `${hand}: it ${words}`,
  besideChosen: (difference: string) => `Beside the chosen one, here: ${difference}.`,
  besideFirst: (difference: string) => `Beside the first: ${difference}.`,
  impossible,
  unreachable,
  /** From one note to another, by their names. */
  lift: (from: string, to: string) =>
    `${from} to ${to} is no step for one place of the hand: lift it`,

  proposals: {
    title: 'Proposals',
    first: 'A fingering that costs the hand little.',
    none: 'There is no note for this hand.',
    see: 'See it',
    seeNamed: (n: number) => `See it on the music: fingering ${n}`,
    take: 'Take over',
    takeNamed: (n: number) => `Take over: fingering ${n}`,
    asNew: 'As a new version',
    asNewNamed: (n: number) => `As a new version: fingering ${n}`,
    taken: (version: string) => `Taken over into ${version}`,
    takenAsNew: (version: string) =>
      `${version}: taken over and chosen; change what does not suit your hand`,
  },

  /** How new versions are named, until the person does. */
  names: {
    mine: 'My fingering',
    proposed: 'A fingering',
    file: 'From the file',
    copy: (name: string) => `${name}, a copy`,
  },
  versions: {
    inFile: 'As in the file',
    chosen: (name: string) => `${name}: chosen`,
    removed: (name: string) => `${name}: removed`,
    name: 'Name',
    nameNamed: (name: string) => `Name and remark: ${name}`,
    copy: 'Copy',
    copyNamed: (name: string) => `Copy: ${name}`,
    remove: 'Remove',
    removeNamed: (name: string) => `Remove: ${name}`,
    origin: 'From',
    remark: 'Remark',
    keep: 'Keep',
  },
  origins: {
    mine: 'mine',
    teacher: 'my teacher’s',
    edition: 'an edition',
    proposal: 'a proposal',
    file: 'the file',
  },
  digits: (n: number) => (n === 0 ? 'no digits yet' : plural(n, 'digit')),
  carried: (carried: number, dropped: number) => {
    const stand = `${carried} ${carried === 1 ? 'stands' : 'stand'} here`
    const lost = `; ${dropped} ${dropped === 1 ? 'is' : 'are'} dropped, since the notes are not in this edition`
    return `Of your ${plural(carried + dropped, 'digit')}, ${stand}${dropped > 0 ? lost : ''}.`
  },

  pad: {
    title: 'Finger of this note',
    before: 'The note before',
    finger: (finger: number) => `Finger ${finger}`,
    takeAway: 'Take the digit away',
    next: 'The next note',
  },

  span: {
    title: 'Hand',
    sizes: {
      small: 'small: an octave',
      medium: 'medium: a ninth',
      large: 'large: a tenth',
    },
    measured: (semitones: number) => `measured: ${interval(semitones)}`,
    measure: 'Measure my hand …',
    measuring: 'Measure my hand',
    play: 'Play the widest interval that one hand reaches without strain, both keys held together.',
    soFar: (semitones: number) => `So far ${interval(semitones)}.`,
    keep: 'Keep it',
    leave: 'Leave it',
  },
})

export type FingeringText = typeof fingeringText

/** 'crosses the thumb less, stretches more' */
export const tellDifference = (difference: readonly Told<typeof differences>[]): string =>
  difference.map((each) => tell(fingeringText.differences, each)).join(', ') ||
  fingeringText.sameCost

/** '3 on two keys at once' */
export const tellImpossible = (what: Told<typeof impossible>): string =>
  tell(fingeringText.impossible, what)

/** What is out of reach, as `tellUnreachable` says it; of a leap the keys, which whoever says it names. */
export type Beyond<Key> =
  Told<typeof unreachable> | { readonly kind: 'lift'; readonly from: Key; readonly to: Key }

/** 'the chord spans 16 semitones, more than a ninth: roll it, or give a note to the other hand' */
export const tellUnreachable = <Key>(what: Beyond<Key>, name: (key: Key) => string): string =>
  what.kind === 'lift'
    ? fingeringText.lift(name(what.from), name(what.to))
    : tell(fingeringText.unreachable, what)
