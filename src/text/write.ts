import { catalogue } from './text'

/** Music that is typed or played in. */
export const writeText = catalogue('write', {
  untitled: 'Fragment',
  titleField: 'Title',
  keep: 'Keep it as a piece',
  backToPieces: 'Back to the pieces',
  opening: 'Opening …',
  typing: {
    title: 'Write a fragment',
    notes: 'Notes',
    empty: 'The notes stand here as you write.',
    unreadable: 'The notes stand here again when the text can be read.',
    place: (line: number, column: number) => `Line ${line}, column ${column}`,
  },
  /** How typed music is written; its own words and pitch names are the same in all languages. */
  how: {
    title: 'How it is written',
    settings: <N>(pickup: N) => [
      'on the first line, each of them only where it is needed; ',
      pickup,
      ' for a pickup of a quarter',
    ],
    hands: 'begin a line of a hand; its next line goes on where it ended',
    pitches: 'pitches; middle C is C4',
    lengths: 'a quarter, an eighth, a dotted quarter; a length holds until the next',
    rest: 'a rest',
    chord: 'a chord',
    held: 'holds the note over the bar line',
    barLines: 'bar lines may be left out; where they stand, the bar is counted',
    example: 'Put an example in',
  },
  recording: {
    title: 'Play a fragment in',
    how: 'The metronome counts one bar; then play, in time with it. It stops by Space, or by itself after two silent bars. What you play in the count-in becomes a pickup.',
    counted: 'What is counted',
    time: 'Time',
    tempo: 'Tempo',
    smallest: 'Smallest notes',
    grids: { eighths: 'eighths', triplets: 'triplets of eighths', sixteenths: 'sixteenths' },
    playedBy: 'Played by',
    record: 'Record',
    again: 'Record again',
    stop: 'Stop',
    empty: 'The notes will stand here.',
    afterStop: 'The notes come when you have stopped.',
    states: {
      ready: 'Choose what is counted, and record.',
      starting: 'The metronome begins …',
      silent: 'No click can sound: switch the sound on under Options.',
      countIn: 'One bar is counted …',
      play: 'Play.',
      recording: 'Recording.',
      nothing: 'Nothing was played.',
      done: 'Here it is. Keep it, or record again.',
    },
  },
})

export type WriteText = typeof writeText
