import type { Result } from '@/music/result'
import { gatherPiece } from './gatherPiece'
import { joinNotes } from './joinNotes'
import { readMidiFile } from './midiFile'
import type { ReadProblem } from './readProblem'
import type { PieceRead } from './score'
import { validate } from './validate'

/** A Standard MIDI File of format 0 or 1 as a `Score`; by itself, so that a page can have it without the reader of MusicXML. */
export const readMidiPiece = (
  bytes: Uint8Array,
  fileName: string,
): Result<PieceRead, ReadProblem> => {
  const file = readMidiFile(bytes, joinNotes)
  return file.ok ? validate(gatherPiece(file.value, fileName)) : file
}
