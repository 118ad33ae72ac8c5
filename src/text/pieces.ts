import { plural } from './plural'
import { catalogue } from './text'

/** The list of pieces, and how a piece comes in. */
export const piecesText = catalogue('pieces', {
  title: 'Pieces',
  notebook: 'Notebook of all pieces',
  search: 'Search',
  noneFound: 'No piece has all of these words.',
  found: (found: number, all: number) => `${found} of ${plural(all, 'piece')}`,
  opening: 'Opening the pieces …',
  removed: (title: string) => `“${title}” is removed. The record of your practice of it stays.`,
  bring: {
    title: 'Bring a piece of your own',
    /** The endings of the files as they stand in their names. */
    how: <N>(musicXml: readonly N[], midi: N) => [
      'A score in MusicXML (',
      ...musicXml.flatMap((ending, i) => (i === 0 ? [ending] : [', ', ending])),
      ') serves best; a Standard MIDI File (',
      midi,
      ') serves too, best with a track for each hand. Drop it anywhere, or choose it. It stays on this machine.',
    ],
    choose: 'Choose a file …',
    file: 'File of a piece',
  },
  make: {
    title: 'Make a fragment of your own',
    what: 'A few bars from a book, or an exercise that your teacher wrote down for you.',
    write: 'Write a fragment',
    record: 'Play a fragment in',
  },
  /** A piece in the list. */
  row: {
    fromFile: (fileName: string) => `from ${fileName}`,
    change: 'Change',
    changeOf: (title: string) => `Change ${title}`,
    title: 'Title',
    rename: 'Rename',
    remove: 'Remove …',
    removeOf: (title: string) => `Remove ${title}`,
    sure: (title: string) =>
      `Remove “${title}” and its file from this machine? The record of your practice of it stays, and finds the piece again when you bring it back.`,
    removeIt: 'Remove it',
    keepIt: 'Keep it',
  },
  /** A better edition of a piece. `file` is the name of its file. */
  edition: {
    choose: 'A better edition …',
    fileOf: (title: string) => `File of a better edition of ${title}`,
    replaceOf: (title: string) => `Replace ${title}`,
    same: (file: string) =>
      `“${file}” has the same notes throughout: the whole record holds for it.`,
    unpractised: (file: string) =>
      `Nothing of it has been practised yet, so no record need carry over to “${file}”.`,
    carries: (practised: number, agreeing: number, file: string) => {
      const rest = practised - agreeing
      const kept =
        rest === 0 ? '' : ` The record of the other ${rest} stays, but does not count for it.`
      return `Of ${plural(practised, 'practised chunk')}, ${agreeing} ${
        agreeing === 1 ? 'has' : 'have'
      } the same notes in “${file}” and ${agreeing === 1 ? 'carries' : 'carry'} over.${kept}`
    },
    replace: 'Replace it',
    keepOld: 'Keep the old one',
  },
  /** Which parts of a file are taken. */
  parts: {
    label: 'Parts of the file',
    taken: (count: number, names: readonly string[]) =>
      `The file has ${plural(count, 'part')}; taken: ${names.join(', ')}`,
    unnamed: (number: number) => `part ${number}`,
    choose: 'Parts to play',
    notes: (n: number) => plural(n, 'note'),
    otherMusic: 'Other parts are other music, with a record of their own; that of these stays.',
    take: 'Take these',
  },
  problems: {
    yourPieces: 'Your pieces',
    ofProgram: 'This is a piece that comes with the program.',
  },
  /** Of a piece that is not in the list and was never named. */
  somePiece: 'A piece',
})

export type PiecesText = typeof piecesText
