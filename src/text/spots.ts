import { capital } from './numberWords'
import { decimal } from './numbers'
import { plural } from './plural'
import { catalogue } from './text'
import { tell, type Told } from './told'

/** The least that a leap or a chord spans. */
const upTo = {
  fifth: 'up to a fifth',
  sixth: 'up to a sixth',
  seventh: 'up to a seventh',
  octave: 'up to an octave',
  ninth: 'up to a ninth',
  tenth: 'up to a tenth',
  eleventh: 'up to an eleventh',
  twelfth: 'up to a twelfth',
  thirteenth: 'up to a thirteenth',
  fourteenth: 'up to a fourteenth',
  twoOctaves: 'up to two octaves',
  beyond: 'more than two octaves',
} as const

type Interval = keyof typeof upTo

const doubleNotes = {
  thirds: 'thirds',
  sixths: 'sixths',
  octaves: 'octaves',
  mixed: 'double notes',
} as const

/** Why a place is hard, in words of the trade: with what belongs to it, data that can be told (told.ts). */
const reasons = {
  speed: ({ onsetsASecond }: { readonly onsetsASecond: number }) =>
    `fast: ${decimal(onsetsASecond, 1)} onsets a second`,
  leap: ({ widest }: { readonly widest: Interval }) => `leaps: ${upTo[widest]}`,
  stretch: ({ widest }: { readonly widest: Interval }) => `stretches: ${upTo[widest]}`,
  /** Double notes by their interval, or chords of up to so many notes. */
  chords: ({ struck }: { readonly struck: keyof typeof doubleNotes | number }) =>
    typeof struck === 'number'
      ? `chords of up to ${struck} notes in one hand`
      : doubleNotes[struck],
  repeats: () => 'repeated notes',
  trill: () => 'trills or tremolos',
  topography: () => 'black and white keys in turn',
  fingering: () => 'awkward for the fingers',
  thumb: () => 'thumb passings',
  accidentals: () => 'accidentals',
  crossing: () => 'the hands cross',
  /** So many notes of the right hand to so many of the left, where that can be told. */
  rhythm: ({ against }: { readonly against?: readonly [right: number, left: number] }) =>
    against ? `${against[0]} against ${against[1]}` : 'rhythms that do not divide',
}

/** Hard spots and their reasons. */
export const spotsText = catalogue('spots', {
  title: 'Hard spots',
  looking: 'Looking for them …',
  reasons,
  /** A way to practise each (common practice, no source). */
  ways: {
    speed: 'groups of three and four at half the tempo, in long-short and short-long rhythms',
    leap: 'the leap alone: land on the keys without striking, then strike; look ahead to the next place',
    stretch: 'roll the chord slowly and stop when the hand tires; leave out a note if it strains',
    chords:
      'each voice alone, then two by two; prepare the fingers over the keys before they go down',
    repeats:
      'slowly with a loose wrist, accents on every second and third note; try a change of fingers',
    trill: 'measured and slow, four notes to a beat, then eight; begin and end on the written note',
    topography:
      'move the hand in between the black keys and out again, slowly, without turning the wrist',
    fingering: 'decide the fingers and write them in; groups of three around the awkward place',
    thumb: 'the passing alone: two notes before and two after, the thumb prepared early',
    accidentals: 'name the notes, blocked as chords where the hand allows it',
    crossing:
      'hands separately, then together without sound: which hand is above, and who gives way',
    rhythm: 'tap both hands on the lid, counting the common division; then one beat as a loop',
  },
  /** A spot within one beat, within one bar, and over bar lines; hands in words. */
  inBeat: (bar: number, beat: number, hand: string) => `bar ${bar}, beat ${beat}, ${hand}`,
  inBar: (bar: number, from: number, to: number, hand: string) =>
    `bar ${bar}, beat ${from} to beat ${to}, ${hand}`,
  overBars: (fromBar: number, from: number, toBar: number, to: number, hand: string) =>
    `bar ${fromBar}, beat ${from} to bar ${toBar}, beat ${to}, ${hand}`,
  aPassage: 'a passage',
  byYourWord: 'a hard spot by your word',
  /** At least, since two flaws of one beat may be of one repetition or of two. */
  played: (flawed: number, of: number) =>
    `From your playing: flawed here in at least ${flawed} of ${of} repetitions`,
  whole: (about: string, from: string, to: string) =>
    `As a whole about ${about}, somewhere between ${from} and ${to} (by its hard places at this tempo, its number of notes, its compass and its sharps or flats): rough, to compare pieces with each other, and not a grade.`,
  none: 'Nothing here is harder than the rest.',
  limits:
    'A program sees nothing of voicing, pedalling, memory and nerves: correct the list by what your hands say.',
  buttons: {
    build: 'To its build-up',
    buildShort: 'Build-up',
    choose: 'Choose',
    accept: 'Accept',
    reject: 'Reject',
    makePassages: 'Make passages of these',
    takeBack: 'Take back',
  },
  add: (bars: string) => `Add ${bars}`,
  /** What a button would do, and with which spot. */
  named: {
    build: (where: string) => `To its build-up: ${where}`,
    choose: (where: string) => `Choose: ${where}`,
    accept: (where: string) => `Accept: ${where}`,
    reject: (where: string) => `Reject: ${where}`,
    up: (where: string) => `Move up: ${where}`,
    down: (where: string) => `Move down: ${where}`,
    takeBack: (where: string) => `Take back: ${where}`,
  },
  /** What was just done. */
  done: {
    accepted: (where: string) => `${capital(where)}: a passage`,
    rejected: (where: string) => `${capital(where)}: rejected, folded away under the list`,
    moved: (where: string, rank: number, of: number) => `${capital(where)}: ${rank} of ${of}`,
    added: (bars: string, hand: string) => `${capital(bars)}, ${hand}: a hard spot by your word`,
    passagesMade: (n: number) => `${plural(n, 'passage')} made`,
  },
  rejected: (n: number) => plural(n, 'rejected spot'),
  carried: (carried: number, dropped: number) => {
    const lost = `; ${dropped} ${dropped === 1 ? 'is' : 'are'} dropped, since most of the notes are not in this edition`
    const all = plural(carried + dropped, 'hard spot')
    return `Of your words on ${all} ${carried} ${carried === 1 ? 'holds' : 'hold'} here${dropped > 0 ? lost : ''}.`
  },
  problems: {
    notLooked: (why: string) => `The hard spots could not be looked for: ${why}`,
    unread: (why: string) => `What you said of hard spots cannot be read: ${why}`,
    unkept: (why: string) => `This holds only until the page is closed: ${why}`,
  },
})

export type SpotsText = typeof spotsText

/** 'leaps: up to a tenth' */
export const tellReason = (reason: Told<typeof reasons>): string => tell(spotsText.reasons, reason)
