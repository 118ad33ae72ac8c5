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
  /** Typed music (typedMusic.ts); lines and columns count from 1. */
  | {
      readonly kind: 'typed'
      readonly line: number
      readonly column: number
      readonly sentence: string
    }
  | XmlProblem
  | ArchiveProblem

/** Lines count from 1. */
type XmlProblem =
  | { readonly kind: 'unknownFormat' }
  | { readonly kind: 'unknownLetters'; readonly name: string }
  /** `inside`: the element that does not end, or ''. */
  | { readonly kind: 'cutXml'; readonly line: number; readonly inside: string }
  | { readonly kind: 'brokenXml'; readonly line: number; readonly what: string }
  | { readonly kind: 'entities'; readonly line: number }
  | { readonly kind: 'tooDeep'; readonly line: number; readonly limit: number }
  | { readonly kind: 'otherXml'; readonly root: string }

type ArchiveProblem =
  | { readonly kind: 'brokenArchive'; readonly what: string }
  | { readonly kind: 'tooLargeUnpacked'; readonly bytes: number }
  | { readonly kind: 'noScoreInArchive'; readonly scores: number }

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
      return 'The file is without a single note: choose another, or export the piece with its notes.'
    case 'onlyDrums':
      return 'The file has notes for drums only (channel 10, or without pitch): choose a file with a piano part.'
    case 'typed':
      return `The text stops making sense at line ${problem.line}, column ${problem.column}: ${problem.sentence}`
    case 'unknownFormat':
      return 'This is neither a Standard MIDI File nor MusicXML (it begins with neither “MThd” nor “<”): export the piece as MusicXML (.musicxml, .mxl) or as a MIDI file (.mid) and choose that.'
    case 'unknownLetters':
      return `The file is written in ${problem.name}, which is not read here: export it again in UTF-8.`
    case 'cutXml':
      return `The file is cut short: it ends at line ${problem.line}${problem.inside && `, inside <${problem.inside}>`}; copy or export it again.`
    case 'brokenXml':
      return `The file is damaged: at line ${problem.line} ${problem.what}; copy or export it again.`
    case 'entities':
      return `The file defines words of its own (<!ENTITY>, at line ${problem.line}), which can do harm and which no MusicXML needs: export the piece again.`
    case 'tooDeep':
      return `The file is no usual MusicXML: at line ${problem.line} more than ${problem.limit} elements stand inside each other; export the piece again.`
    case 'otherXml':
      return `This XML file holds <${problem.root}> and no score of MusicXML (<score-partwise>): export the piece as MusicXML and choose that.`
    case 'brokenArchive':
      return `The compressed file cannot be opened: ${problem.what}; export the piece again as .mxl or .musicxml.`
    case 'tooLargeUnpacked':
      return `The compressed file would become ${megabytes(problem.bytes)} MB when opened, more than a score of its size or of any size can hold (at most ${megabytes(largestFile)} MB): export the piece alone.`
    case 'noScoreInArchive':
      return problem.scores === 0
        ? 'The compressed file holds no MusicXML score: export the piece as .mxl or .musicxml and choose that.'
        : `The compressed file holds ${problem.scores} scores and does not say which is meant: unpack it and choose one of them.`
  }
}

const megabytes = (bytes: number): number => Math.ceil(bytes / (1024 * 1024))
