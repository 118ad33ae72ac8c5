import { catalogue } from './text'

/** The list of keys. */
export const keysText = catalogue('keys', {
  title: 'Keys',
  close: 'Close',
  thisList: 'this list',
  options: 'the options',
  anotherPage: 'another page',
  /** Opened by `G`. */
  goTo: {
    title: 'Another page',
    pages: {
      pieces: 'Pieces',
      today: 'Today',
      summary: 'This session',
      review: 'Review',
      notebook: 'Notebook',
      students: 'Students',
      journal: 'The record',
    },
  },
  /** What is printed on the keys of the computer. */
  names: {
    space: 'Space',
    enter: 'Enter',
    escape: 'Esc',
    backspace: 'Backspace',
    ctrlEnter: 'Ctrl Enter',
  },
  drill: {
    metronome: 'metronome; in a pause: go on',
    hear: 'hear it',
    again: 'again, from the beginning',
    goOn: 'pause, and go on',
    next: 'next',
    back: 'back',
    tempo: 'faster, slower',
    remedies: 'at a problem: one of the exercises against it',
    perBeat: 'clicks between the beats: none, two, three, four to a beat',
    silentBars: 'two bars of clicks, two silent, in turns',
    simulated: 'a simulated player plays, and stops; nothing is recorded',
    notebook: 'the notebook; the drill waits meanwhile',
    undo: 'take back what the coach decided last',
    end: 'end the session',
  },
  /** On the pages that have few. */
  buildUp: { next: 'the next exercise', notebook: 'the notebook', piece: 'the piece' },
  tapTest: {
    toggle: 'start the clicks, and stop them',
    use: 'leave out what was measured',
    back: 'back',
  },
  record: 'record, and stop',
  keepPiece: 'keep it as a piece',
  pieces: {
    search: 'search',
    bring: 'bring in a file',
    write: 'write a fragment',
    record: 'play a fragment in',
    today: 'today’s plan',
  },
  /** What two of them mean in today's plan. */
  today: {
    next: 'the next item of today; what was not played is left for another day',
    back: 'play the next item first, this one after it',
  },
  /** `key`: a key of the instrument that means the same. */
  bound: (key: string, isFree: boolean) =>
    isFree ? ` · ${key}` : ` · ${key}, which here belongs to the passage and plays`,
  letters:
    'Letters play: the computer’s keyboard is a small piano. Keys of the instrument and its pedals can mean a command too: see Options.',
})

export type KeysText = typeof keysText
