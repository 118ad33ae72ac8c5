import { grouped } from './numbers'
import { plural } from './plural'
import { catalogue } from './text'

const many = (n: number, what: string): string => `${grouped(n)} ${what}${n === 1 ? '' : 's'}`

/** What of a file is new here. */
export interface NewOnes {
  readonly events: number
  readonly repetitions: number
  readonly entries: number
}

/** Of how many pieces something comes that is not here, newer than here, or here already. */
export interface OfPieces {
  readonly fresh: number
  readonly newer: number
  readonly known: number
}

/** The record: copies, saving, taking in. */
export const recordsText = catalogue('records', {
  title: 'The record',
  intro:
    'Everything that you practise is recorded on this machine and nowhere else. Save it as a file now and then, and keep that file in another place: on a new machine it brings everything back.',
  keys: {
    save: 'save the whole record',
    table: 'save a table of repetitions',
    choose: 'choose a record to take in',
  },
  review: <N>(link: (words: string) => N) => [link('Review'), ' of what is recorded.'],
  moment: (day: string, time: string) => `${day}, ${time}`,
  save: {
    title: 'Save it',
    what: <N>(slanted: (ending: string) => N) => [
      'The whole record with every key that was played, your pieces and your word on their hands and hard spots, as JSON Lines (',
      slanted('.jsonl'),
      '): the file to keep. The repetitions as a table (',
      slanted('.csv'),
      '): for a spreadsheet; it cannot be taken in again.',
    ],
    whole: 'Save the whole record',
    table: 'Save a table of repetitions',
    tableFailed: (why: string) => `The table could not be saved. ${why}`,
    never: 'Not saved as a file so far.',
    last: (moment: string) => `Saved last on ${moment}.`,
    since: (moment: string, repetitions: number) =>
      repetitions === 0
        ? `Saved last on ${moment}, nothing since.`
        : `Saved last on ${moment}, ${many(repetitions, 'repetition')} since.`,
    /** Of a database that cannot be read. */
    unsavedAlone: (why: string) =>
      `${why} The saved file holds what is not in the database: take it in when that can be read again.`,
  },
  reminder: {
    again: (moment: string, repetitions: number) =>
      `The record was saved last on ${moment}; ${many(repetitions, 'repetition')} since then are on this machine alone.`,
    first: (repetitions: number) =>
      `${many(repetitions, 'repetition')} are on this machine alone. Save the record as a file now and then, and keep it in another place.`,
  },
  browser: {
    title: 'In this browser',
    ask: 'Ask the browser to keep it',
    room: (used: string, free: string) =>
      `All of Passagework takes ${used} here; there is room for ${free} more.`,
    underOne: 'less than 1 MB',
  },
  folder: {
    title: 'A second copy in a folder',
    choose: 'Choose a folder …',
    chooseOther: 'Choose another folder …',
    allow: 'Let it write',
    write: 'Write now',
    stop: 'Stop, and leave the files there',
    unsupported:
      'This browser lets no page write into a folder. Save the record as a file now and then instead.',
    none: 'Choose a folder, perhaps one that is copied to another disk or machine by itself. After each session what is new is written there: one file for each month, and one for the pieces, of the same kind as the saved record.',
    asks: (name: string) =>
      `The browser wants to be asked again before this page may write into “${name}”.`,
    kept: (name: string) => `Kept in “${name}”.`,
    writing: (name: string, month: number, of: number) =>
      `Writing into “${name}”: month ${month} of ${of}.`,
    notWritten: 'Nothing is written there yet.',
    written: (moment: string) => `Written last on ${moment}.`,
    elsewhere: (n: number) =>
      `Its files hold ${plural(n, 'event')} that are not in the record here; they stay there. Take the files in below to have them here too.`,
    /** Why it cannot be written, and what to do. */
    problems: {
      absent:
        'The folder is not there: it was moved, renamed or removed, or its disk is not plugged in. Bring it back and write again, or choose another folder. The record in the browser is not touched.',
      refused:
        'The browser does not let this page write into the folder. Choose it again and allow it. The record in the browser is not touched.',
      full: 'There is no room left on the disk of the folder. Free some space and write again. The file there is as it was before.',
      held: 'Another program or tab holds the file in the folder. Close it there and write again. The file is as it was before.',
      other: (message: string) =>
        `The folder could not be written: ${message} Write again; if that does not help, choose the folder again. The record in the browser is not touched.`,
      /** Stands in `other`. */
      wrongSize: (file: string, has: number, wanted: number) =>
        `${file} has ${has} bytes after it was written, not ${wanted}.`,
    },
  },
  takeIn: {
    title: 'Take in a saved record',
    what: 'From another machine, or one that was saved here; of a folder, all its files at once. What is here already is left as it is, so the same file can be taken in twice. Pieces come with their files; of a title, and of your word on hands and hard spots, the newest stands.',
    choose: 'Choose a record …',
    file: 'File of a record',
  },
  /** A file on its way in: into one’s own record, or that of a student. */
  incoming: {
    several: (n: number) => `${n} files`,
    reading: (file: string, done: string) => `Reading ${file}: ${done}`,
    taking: (file: string, done: string) => `Taking in ${file}: ${done}`,
    cancel: 'Cancel',
    leave: 'Leave it',
    close: 'Close',
    unread: (n: number) => `${plural(n, 'line')} cannot be read and will be left out:`,
    line: (line: number, file: string | undefined, why: string) =>
      `Line ${line}${file === undefined ? '' : ` of ${file}`}: ${why}`,
    more: (n: number) => `and ${n} more.`,
    /** Why it cannot be taken in. */
    problems: {
      tooLarge: 'This file is larger than 400 MB and cannot be read here in one piece.',
      noText:
        'This is not a record of Passagework: it is no text. Choose the .jsonl file that was saved here.',
      noRecord: (line: number, why: string) =>
        `This is not a record of Passagework: no line of it is one. Line ${line}: ${why} Choose the .jsonl file that was saved here.`,
      empty: 'This file is empty. Choose the .jsonl file that was saved here.',
      nothingChanged: (why: string) => `${why} Nothing was changed.`,
      half: (why: string) =>
        `${why} What had come in stays; take the same file again for the rest.`,
    },
  },
  preview: {
    events: 'Events in the file',
    known: 'Here already',
    fresh: 'New',
    newOnes: ({ events, repetitions, entries }: NewOnes) =>
      [
        grouped(events),
        ...(events > 0 ? [`, among them ${many(repetitions, 'repetition')}`] : []),
        ...(entries > 0
          ? [` and ${grouped(entries)} ${entries === 1 ? 'entry' : 'entries'} of the notebook`]
          : []),
      ].join(''),
    days: 'Days',
    span: (days: number, first: string, last: string) =>
      `${grouped(days)}, ${first === last ? first : `${first} to ${last}`}`,
    pieces: 'Pieces',
    /** So many besides those that are named. */
    otherPieces: (n: number, named: number) => plural(n, named > 0 ? 'other' : 'piece'),
    kept: {
      pieceFile: 'Files of pieces',
      pieceHands: 'Corrected hands',
      pieceSpots: 'Your word on hard spots',
    },
    ofPieces: ({ fresh, newer, known }: OfPieces) =>
      [
        ...(fresh > 0 ? [`${plural(fresh, 'piece')}, new here`] : []),
        ...(newer > 0 ? [`${plural(newer, 'piece')}, newer than here`] : []),
        ...(known > 0 ? [`${plural(known, 'piece')}, here already`] : []),
      ].join('; '),
    takeEvents: (n: number) => `Take in ${many(n, 'event')}`,
    takePieces: 'Take it in',
    allHere: 'All of it is here already.',
  },
  done: {
    came: <N>(strong: (figure: string) => N, added: number, known: number, file: string) => [
      strong(grouped(added)),
      ` ${added === 1 ? 'event' : 'events'} of ${file} came in, ${grouped(known)} ${known === 1 ? 'was' : 'were'} here already.`,
    ],
    taken: (n: number) =>
      `${plural(n, 'event')} bore the name of another one that is here; those here were kept.`,
    pieces: (n: number) => `${plural(n, 'piece')} came with it.`,
  },
})

export type RecordsText = typeof recordsText
