import { plural } from './plural'
import { catalogue } from './text'

/** The page of a piece: its music, passages, hands. */
export const pieceText = catalogue('piece', {
  /** The passage, by its name and figures. */
  choice: {
    fromBar: 'From bar',
    toBar: 'to bar',
    hand: 'Hand',
    goalTempo: 'Goal tempo',
  },
  /** `where`: 'bars 1–4'. */
  chosen: (where: string, hand: string) =>
    `${where.charAt(0).toUpperCase()}${where.slice(1)}, ${hand}`,
  noNote: (where: string) => `There is no note in ${where}: choose other bars.`,
  noNoteOfHand: (where: string, hand: string) =>
    `There is no note for the ${hand} in ${where}: choose other bars or the other hand.`,
  played: (bar: number) => `You played bar ${bar}`,
  playedOneOf: (bar: number, place: number, places: number) =>
    `You played bar ${bar}, place ${place} of ${places}: play it again for the next`,
  /** For who has never played here. */
  first: {
    label: 'First steps',
    begin:
      'To begin: start the drill and play these notes. Each repetition is judged, and after a streak of clean ones the tempo goes up by itself.',
    watch: 'Or watch a simulated player first.',
    own: 'Bring a piece of your own …',
  },
  start: 'Start the drill',
  build: 'Build it up',
  watch: 'Watch a simulated player first',
  chunks: {
    title: 'Chunks to drill',
    what: 'Each is small enough to be played right, and shares its last notes with the next.',
    states: {
      kept: ' · kept',
      slipped: ' · slipped',
      secure: ' · secure',
      practised: ' · practised',
      untouched: '',
    },
  },
  whole: {
    title: 'The whole piece',
    smaller: 'Smaller notes',
    larger: 'Larger notes',
    chosenBars: 'Chosen bars',
    progress: (drawn: number, of: number) => `Engraving the lines: ${drawn} of ${of}`,
    /** What is marked under the staves and over them; each is the mark itself. */
    how: <N>(mark: {
      readonly untouched: N
      readonly practised: N
      readonly secure: N
      readonly kept: N
      readonly slipped: N
      readonly hard: N
      readonly harder: N
      readonly passage: N
    }) => [
      'Choose bars by dragging over them, by playing their first notes, or with the arrow keys and Shift. Under the staves: ',
      mark.untouched,
      ' a chunk to drill, ',
      mark.practised,
      ' practised, ',
      mark.secure,
      ' secure, ',
      mark.kept,
      ' kept on a later day, ',
      mark.slipped,
      ' slipped. Over them: ',
      mark.hard,
      ' a hard spot, harder ',
      mark.harder,
      ', a passage ',
      mark.passage,
      '.',
    ],
    lineWithSpot: (bars: string) => `${bars}, a hard spot`,
  },
  /** What the keys of the page do. */
  keys: {
    start: 'start the drill',
    build: 'the build-up',
    watch: 'watch it played',
    arrows: 'in the music: the chosen bars; with Shift their end',
    picks: 'in the music: pick a note; then ← → its neighbours',
    digits: 'the finger of the note that is picked, and on',
    away: 'take the digit away; without a note, the last word on hands',
    hands: 'left, right hand, where the file does not tell',
    propose: 'propose a fingering',
    spots: 'the hard spots; there ↑ ↓ from one to the next',
    spotWord: 'accept, reject the hard spot in focus',
    spotRank: 'move the hard spot in focus up, down',
    notebook: 'the notebook',
    weeks: 'the weeks',
    size: 'larger, smaller notes',
  },
  /** The person's word on which hand plays what. */
  hands: {
    label: 'Correct the hands',
    inferred: (about: string) =>
      `The file does not tell the hands: they are inferred. If ${about} is not right:`,
    thisNote: 'this note',
    undo: 'undo',
    undone: 'The hands are as they were before.',
    ofFile: 'The file says which hand plays there, and that stays.',
    changed: (notes: number, hand: string) => `${plural(notes, 'note')}: ${hand}.`,
    /** What became of the corrections of an older edition. */
    carried: ({
      carried,
      inPart,
      told,
      dropped,
    }: {
      readonly carried: number
      readonly inPart: number
      readonly told: number
      readonly dropped: number
    }) => {
      const are = (n: number): string => `${n} ${n === 1 ? 'is' : 'are'}`
      const some = inPart === 0 ? '' : ` (${inPart} for some of the notes only)`
      const parts = [
        `${carried} ${carried === 1 ? 'holds' : 'hold'} here${some}`,
        ...(told > 0 ? [`${are(told)} not needed, since this file tells those hands`] : []),
        ...(dropped > 0
          ? [`${are(dropped)} dropped, since the notes are not in this edition`]
          : []),
      ]
      return `Of your ${plural(carried + told + dropped, 'correction')} of the hands, ${parts.join('; ')}.`
    },
  },
  /** A note: 'D4, right hand, inferred, finger 2'. */
  note: {
    from: { file: '', inferred: ', inferred', person: ', by your word' },
    fingers: (fingers: readonly string[]) => `, finger ${fingers.join(', then ')}`,
  },
})

export type PieceText = typeof pieceText
