import { plural } from './plural'
import { catalogue } from './text'

const verdicts = { clean: 'Clean', flawed: 'Flawed', brokenOff: 'Broken off' }

/** The name of a key, where there is one. */
type Known = string | undefined

/** Flaws, verdicts, and how strictly they are judged. */
export const flawsText = catalogue('flaws', {
  /** By name, as in a list of what went wrong. */
  names: {
    wrong: 'Another key',
    missing: 'Missing',
    extra: 'A key too many',
    repeated: 'Struck twice',
    order: 'Order exchanged',
    restart: 'Went back',
    hesitation: 'Stop',
    early: 'Early',
    late: 'Late',
    uneven: 'Uneven',
    spread: 'Chord not together',
    drift: 'Tempo drifts',
  },
  /** The same names within a sentence. */
  inSentence: {
    wrong: 'another key',
    missing: 'missing',
    extra: 'a key too many',
    repeated: 'struck twice',
    order: 'order exchanged',
    restart: 'went back',
    hesitation: 'stop',
    early: 'early',
    late: 'late',
    uneven: 'uneven',
    spread: 'chord not together',
    drift: 'tempo drifts',
  },
  /** What happened, in a few words: 'E♭4 in place of E4'. A flaw may lack the written note, or the played key. */
  told: {
    wrong: (written: Known, played: Known) =>
      `${played ?? 'another key'} in place of ${written ?? 'the note'}`,
    missing: (written: Known) => `${written ?? 'the note'} missing`,
    extra: (_: Known, played: Known) => `${played ?? 'another key'} struck, which is not written`,
    repeated: (_: Known, played: Known) => `${played ?? 'another key'} struck again`,
    order: (): string => 'two onsets exchanged',
    restart: (): string => 'went back',
    hesitation: (written: Known) => `a stop before ${written ?? 'the note'}`,
    early: (written: Known) => `${written ?? 'the note'} early`,
    late: (written: Known) => `${written ?? 'the note'} late`,
    uneven: (): string => 'uneven',
    spread: (): string => 'chord not together',
    drift: (): string => 'the tempo drifts',
  },
  /** What the marks on the music mean. */
  legend: {
    marks: 'The marks',
    another: 'Another key: the small head is the one struck most',
    drift: 'Tempo drifts: the line rises where it grew, falls where it sank',
    /** How hard the pencil was pressed: for how often. */
    weights: 'Their weight',
    upTo: (n: number) => (n === 1 ? 'once' : `up to ${plural(n, 'time')}`),
    between: (from: number, to: number) =>
      from === to ? plural(from, 'time') : `${from} to ${to} times`,
    atLeast: (n: number) => `${n} times and more`,
  },
  times: (n: number) => (n === 1 ? 'once' : `${n} times`),
  verdicts,
  /** A verdict with its first flaws, and how many more there are. */
  verdict: (verdict: keyof typeof verdicts, told: readonly string[], more: number) =>
    told.length === 0
      ? `${verdicts[verdict]}.`
      : `${verdicts[verdict]}: ${told.join(', ')}${more > 0 ? `, and ${more} more` : ''}.`,
  standards: {
    notes: 'notes: right keys, right order',
    flow: 'flow: right keys, no stops',
    time: 'time: no stops, steady pulse, chords together',
  },
})

export type FlawsText = typeof flawsText
