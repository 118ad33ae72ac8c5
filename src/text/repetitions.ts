import { plural } from './plural'
import { catalogue } from './text'

/** Lists of repetitions, and a single one seen again. */
export const repetitionsText = catalogue('repetitions', {
  title: 'Repetitions',
  all: 'All repetitions, the last one first.',
  /** What the keys of the page do. */
  keys: {
    above: 'the one above',
    below: 'the one below',
    hear: 'hear it again, and stop',
    more: 'more: earlier days',
    back: 'back',
  },
  back: <N>(key: N) => ['Back ', key],
  earlier: <N>(key: N) => ['Earlier days ', key],
  unread: (why: string) => `Earlier days could not be read. ${why}`,
  count: (n: number) => `${plural(n, 'repetition')}.`,
  countBackTo: (n: number, day: string) => `${plural(n, 'repetition')}, back to ${day}.`,
  onlyUnplayed:
    'That was decided where nothing had been played yet: there is no repetition to show.',
  none: 'There is no such repetition in the record. Take away one of the conditions above, or go back.',
  unplayed: (n: number) => `${n === 1 ? 'Once' : `${n} times`} where nothing had been played yet.`,
  /** What was asked for, one thing after the other. */
  conditions: {
    title: 'Only these',
    without: (condition: string) => `Not only: ${condition}`,
    session: 'this session',
    piece: 'a piece',
    day: (day: string) => day,
    days: (from: string, to: string) => `${from} to ${to}`,
    from: (day: string) => `from ${day} on`,
    until: (day: string) => `until ${day}`,
    ended: 'clean or flawed',
    rung: (tempo: string) => `at ${tempo}`,
    note: (key: string, place: string) => `at ${key} in ${place}`,
    stretch: (stretch: string) => `over ${stretch}`,
    someNote: 'at one note',
    bar: (number: number) => `with a flaw in bar ${number}`,
    someBar: 'with a flaw in one bar',
    played: (played: string, written: string) => `${played} for ${written}`,
    another: (written: string) => `another key for ${written}`,
    cold: 'cold, on a later day',
    streak: 'the longest streak',
    decided: (what: string) => `then ${what}`,
    /** Of each chunk that stands so the one repetition that made it so. */
    made: {
      slipped: 'with which a chunk slipped',
      secure: 'made a chunk secure',
      kept: 'confirmed a chunk cold',
      practised: 'the last one of a chunk that is only practised',
    },
  },
  verdicts: { clean: 'clean', flawed: 'flawed', brokenOff: 'broken off' },
  standards: { notes: 'notes', flow: 'flow', time: 'time' },
  somePiece: 'a piece',
  /** Where and what went wrong, of one repetition. */
  what: (where: string, flaws: string) => `${where}: ${flaws}`,
  forgiven: (flaw: string) => `${flaw} (forgiven)`,
  more: (n: number) => `${n} more`,
  cold: 'cold',
  decided: (what: string) => `then ${what}`,
  seen: {
    title: 'The chosen repetition',
    asked: (where: string, tempo: string) => `${where}; asked at ${tempo}.`,
    askedAndPlayed: (where: string, tempo: string, played: string) =>
      `${where}; asked at ${tempo}, played at ${played}.`,
    flaws: (flaws: string) => `${flaws}.`,
    noPlace: 'Its notes cannot be drawn: the place is not in the score that is here.',
    noPiece: 'Its notes cannot be drawn: the piece is not on this machine.',
    stop: <N>(key: N) => ['Stop ', key],
    hear: <N>(key: N) => ['Hear it again ', key],
    practise: 'Practise it',
    ofChunk: 'All of this chunk',
    noKeys: 'Of this repetition no keys were recorded: it cannot be heard.',
  },
  /** When each key of a repetition came. */
  played: {
    lasted: (seconds: string) => `${seconds} seconds from the first key to the last`,
    written: (seconds: string, tempo: string) => `${seconds} seconds as written at ${tempo}`,
    picture:
      'Above when each onset was due, below when each key came: the taller, the louder; ringed where it was a flaw.',
    dueRow: 'due',
    playedRow: 'played',
    columns: { key: 'Key', seconds: 'Seconds', held: 'Held', velocity: 'Velocity' },
    flaw: (key: string) => `${key}, a flaw`,
  },
})

export type RepetitionsText = typeof repetitionsText
