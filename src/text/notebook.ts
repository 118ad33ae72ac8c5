import { capital } from './numberWords'
import { plural } from './plural'
import { catalogue } from './text'

/** The notebook. */
export const notebookText = catalogue('notebook', {
  title: 'Notebook',
  search: 'Search',
  keys: { search: 'search' },
  about: 'About',
  everything: 'everything',
  entries: (n: number) => (n === 1 ? '1 entry' : `${n} entries`),
  someEntries: (found: number, of: number) =>
    `${found} of ${of === 1 ? '1 entry' : `${of} entries`}`,
  /** What opens it. */
  empty: <N>(key: N) => [
    'Nothing is written yet. On the page of a piece, in its build-up and in a drill, ',
    key,
    ' opens its notebook: fingerings, editions, recordings, what a teacher said, what you tried and whether it helped.',
  ],
  gone: 'A piece that is not here any more',
  allPieces: 'All pieces',
  close: 'Close',
  subjects: {
    idea: 'Idea',
    fingering: 'Fingering',
    teacher: 'From the teacher',
    edition: 'Edition',
    recording: 'Recording',
    tried: 'Tried',
  },
  helped: { true: 'it helped', false: 'it did not help' },
  wholePiece: 'the whole piece',
  /** The entries of some bars, of the piece, of other bars. */
  groups: {
    here: capital,
    piece: 'The whole piece',
    elsewhere: 'Elsewhere',
    places: 'Places',
    entriesOf: (name: string) => `Entries of ${name}`,
  },
  entry: {
    about: (subject: string, where: string) => `${subject}, ${where}`,
    change: 'Change',
    erase: 'Erase',
    changeOf: (about: string) => `Change: ${about}`,
    eraseOf: (about: string) => `Erase: ${about}`,
  },
  form: {
    fresh: 'A new entry',
    change: 'Change the entry',
    empty: 'Write something first.',
    marks: <N>(stress: N, list: N, link: N) => [
      stress,
      ' stresses, ',
      list,
      ' begins a list, ',
      link,
      ' is a link.',
    ],
    /** What the marks are shown on. */
    examples: { stress: '*softly*', list: '- sing', link: '[words](https://…)' },
    didItHelp: 'Did it help?',
    notKnown: 'not known yet',
    of: 'Of',
    leave: 'Leave it as it was',
    save: 'Save',
    said: { written: 'Written.', left: 'It stays as it was.' },
  },
  erased: 'Erased.',
  takeBack: 'Take it back',
  standsAgain: 'It stands again.',
  tried: {
    title: 'Tried at problems, from the record',
    label: 'Tried at problems',
    at: (where: string, tried: string) => `${capital(where)}. ${tried}`,
    /** A problem, and what was done about it one after the other. */
    remedies: (problem: string, remedies: readonly string[]) =>
      `${problem}: ${remedies.join(', then ')}`,
    solved: ', solved',
    leftOff: ', left off',
    stayedAway: '; it did not come again',
    cameAgain: '; it came again',
  },
  strip: {
    write: 'Write in it',
    open: 'Open it',
    entries: 'Entries',
    /** Entries that stayed with an older edition; the link to all pieces. */
    stayed: <N>(n: number, all: N) => [
      `${n === 1 ? 'One entry' : `${n} entries`} stayed with the older edition, whose notes differ there; `,
      all,
      ' has them.',
    ],
    thePiece: 'The piece',
  },
  /** What a decision means from now on. */
  decided: {
    finished: 'Finished: a passage now and then, cold, so that it stays in the hands.',
    laidAside: 'Laid aside: nothing of it is planned until you take it up again.',
    takenUp: 'At work.',
  },
  decide: { finished: 'It is finished', laidAside: 'Lay it aside', takenUp: 'Take it up again' },
  /** Of a piece, how its problems came out. */
  problems: (solved: number, open: number) =>
    `${plural(solved + open, 'problem')} in drills: ${[
      ...(solved > 0 ? [`${solved} solved`] : []),
      ...(open > 0 ? [`${open} still open`] : []),
    ].join(', ')}`,
})

export type NotebookText = typeof notebookText
