/** Why a file could not be read. Byte positions count from 0 at the start of the file. */
export type ReadProblem =
  | { readonly kind: 'empty' }
  | { readonly kind: 'tooLarge'; readonly bytes: number }
  | { readonly kind: 'tooManyEvents'; readonly limit: number }
  | { readonly kind: 'tooLong'; readonly limit: number }
  | { readonly kind: 'notMidi' }
  | { readonly kind: 'separateSequences' }
  | { readonly kind: 'truncated'; readonly lacking: string; readonly byte: number }
  | { readonly kind: 'corrupt'; readonly what: string; readonly byte: number }
  | { readonly kind: 'noNotes' }
  | { readonly kind: 'onlyDrums' }

/** 32 MB: a whole evening of piano music takes less than one. */
export const largestFile = 32 * 1024 * 1024

/** One sentence for the person: what, where, and what to do. */
export const explainReadProblem = (problem: ReadProblem): string => {
  switch (problem.kind) {
    case 'empty':
      return 'The file is empty (0 bytes): copy or export it again.'
    case 'tooLarge':
      return `The file is ${megabytes(problem.bytes)} MB large and at most ${megabytes(largestFile)} MB can be read: export the piece alone, without sound.`
    case 'tooManyEvents':
      return `The file holds more than ${problem.limit} events, too many for one piece: export it as shorter pieces.`
    case 'tooLong':
      return `The last note stands more than ${problem.limit} bars after the beginning, so a time in the file must be wrong: export it again.`
    case 'notMidi':
      return 'This is no Standard MIDI File (it does not begin with “MThd”): export the piece as a MIDI file (.mid) and choose that.'
    case 'separateSequences':
      return 'This MIDI file is of format 2, which holds separate sequences instead of one piece: export the piece as format 0 or 1.'
    case 'truncated':
      return `The file is cut short: it ends at byte ${problem.byte}, where ${problem.lacking}; copy or export it again.`
    case 'corrupt':
      return `The file is damaged: at byte ${problem.byte} ${problem.what}; copy or export it again.`
    case 'noNotes':
      return 'The file is a MIDI file without a single note: choose another, or export the piece with its notes.'
    case 'onlyDrums':
      return 'The file has notes on the drum channel (10) only: choose a file with a piano part.'
  }
}

const megabytes = (bytes: number): number => Math.ceil(bytes / (1024 * 1024))
