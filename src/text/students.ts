import { grouped } from './numbers'
import { plural } from './plural'
import { catalogue } from './text'

/** What a student’s file is. */
export interface StudentsFile {
  readonly repetitions: number
  readonly days: number
  readonly pieces: number
  /** The first and the last day, where something was played. */
  readonly span?: readonly [first: string, last: string]
}

/** The records of students. */
export const studentsText = catalogue('students', {
  title: 'Students',
  intro:
    'For whoever teaches. A student saves the whole record (on the page “The record”) and sends you the file. Here it is opened beside yours, to read only: nothing of it ever comes into your own record.',
  open: 'Open a student’s record …',
  files: 'Files of students’ records',
  ownReview: 'Your own review',
  untitled: 'a piece without a title',
  /** Where the file’s own name tells none. */
  nameless: (place: number) => `Student ${place}`,
  keys: {
    open: 'open a student’s record',
    sort: (column: string) => `sort by ${column.toLowerCase()}; once more the other way`,
  },
  since: {
    title: 'Since when',
    week: 'the last 7 days',
    fourWeeks: 'the last 4 weeks',
    all: 'all time',
  },
  table: {
    title: 'Piece by piece',
    how: 'Pieces and people are not alike: the figures are for the next lesson, not for a contest. After the clean share stands where it lies in 95 of 100 cases; tempo is the last one as a part of the goal, of the chunk in the middle, then of the slowest and the fastest.',
    piece: 'Piece',
    allPieces: 'all pieces',
    nothing: 'Nothing was practised in this time.',
    columns: {
      student: 'Student',
      piece: 'Piece',
      share: 'Clean share',
      minutes: 'Time',
      repetitions: 'Repetitions',
      tempo: 'Tempo',
      lastDay: 'Last',
      slipped: 'Slipped',
    },
    time: (hours: number, minutes: number) =>
      hours === 0 ? `${minutes} min` : `${hours} h ${minutes} min`,
    /** In per cent of the goal: the chunk in the middle, the slowest and the fastest. */
    tempo: (middle: string, least: number, most: number) =>
      least === most ? middle : `${middle}, ${least} to ${most}`,
  },
  roster: {
    summary: (n: number) => `${plural(n, 'student')}: rename, remove`,
    from: (file: string, day: string) => `from ${file}, taken in on ${day}`,
    teacherPage: 'Teacher’s page',
    rename: 'Rename',
    renameOne: (name: string) => `Rename ${name}`,
    remove: 'Remove',
    removeOne: (name: string) => `Remove ${name}`,
    sure: (name: string) =>
      `Remove ${name} and the record from this machine? The file that was sent to you stays where it is, and brings everything back.`,
    keep: 'Keep',
    name: 'Name',
    leave: 'Leave it',
  },
  notHere: {
    title: 'Not here',
    advice: <N>(students: (words: string) => N) => [
      'This address names a student whose record is not on this machine. Go to the ',
      students('students'),
      ' and open the file that was sent to you.',
    ],
  },
  incoming: {
    stop: 'Stop',
    about: ({ repetitions, days, pieces, span }: StudentsFile) =>
      `${plural(repetitions, 'repetition')} on ${plural(days, 'day')}${span ? `, ${span.join(' to ')}` : ''}, of ${plural(pieces, 'piece')}.`,
    older: (name: string) => `An older file of ${name} has sessions of this one.`,
    own: <N>(review: (words: string) => N) => [
      'This file has sessions of your own record. Opened here, they would stand among the students as somebody else’s; your own practice is on the page ',
      review('Review'),
      '.',
    ],
    unread: (n: number) =>
      `${plural(n, 'line')} cannot be read and will be left out; ask for the file once more if they matter.`,
    whose: 'Whose record is it?',
    newOne: 'a new student’s',
    addTo: (name: string) => `${name}’s: add what is new to what is here`,
    name: 'Name of the student',
    take: 'Open it beside yours',
    leave: 'Leave it',
    waiting: (n: number) => `then ${plural(n, 'file')} more`,
    next: 'On to the next file',
    came: <N>(strong: (figure: string) => N, student: N, added: number, known: number) => [
      strong(grouped(added)),
      ` ${added === 1 ? 'event' : 'events'} of `,
      student,
      ` came in, ${grouped(known)} ${known === 1 ? 'was' : 'were'} here already. Your own record is as it was.`,
    ],
    taken: (n: number) =>
      `${plural(n, 'event')} bore the name of another one of this student; those here were kept.`,
  },
})

export type StudentsText = typeof studentsText
