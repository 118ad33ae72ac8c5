import { failed, type Result } from '@/music/result'
import { gatherMusicXml } from './gatherMusicXml'
import { looksLikeZip, openMxl } from './mxl'
import { parseMusicXml } from './parseMusicXml'
import { readMidiPiece } from './readMidiPiece'
import { largestFile, tooLarge } from './largestFile'
import type { ReadProblem } from './readProblem'
import type { PieceRead } from './score'
import { looksTyped, readTypedPiece } from './readTypedPiece'
import { looksLikeMidi } from './smfChunks'
import type { Warning } from './warning'
import { decodeXml, looksLikeXml } from './xmlText'

/**
 * A Standard MIDI File of format 0 or 1, MusicXML, plain or compressed, or typed music, as a `Score`:
 * told apart by the content, whatever the name. The file's name serves as title where the file gives none.
 * `wanted` chooses among the parts of a MusicXML file (`PieceRead.parts`).
 */
export const readPiece = (
  bytes: Uint8Array,
  fileName: string,
  wanted?: readonly number[],
): Result<PieceRead, ReadProblem> => {
  if (bytes.length === 0) return failed({ kind: 'empty' })
  if (bytes.length > largestFile) return failed(tooLarge(bytes.length))
  if (looksLikeMidi(bytes)) return readMidiPiece(bytes, fileName)
  if (looksLikeXml(bytes)) return readXmlPiece(bytes, fileName, wanted)
  if (looksTyped(bytes)) return readTypedPiece(bytes, fileName)
  if (!looksLikeZip(bytes)) return failed({ kind: 'unknownFormat' })
  const score = openMxl(bytes)
  if (!score.ok) return score
  if (!looksLikeXml(score.value.bytes))
    return failed({ kind: 'brokenArchive', damage: { kind: 'namesNoXml' } })
  const piece = readXmlPiece(score.value.bytes, fileName, wanted)
  return piece.ok ? withWarnings(piece.value, score.value.warnings) : piece
}

const readXmlPiece = (
  bytes: Uint8Array,
  fileName: string,
  wanted?: readonly number[],
): Result<PieceRead, ReadProblem> => {
  const xml = decodeXml(bytes)
  if (!xml.ok) return xml
  const file = parseMusicXml(xml.value.text)
  if (!file.ok) return file
  const piece = gatherMusicXml(file.value, fileName, wanted)
  return piece.ok ? withWarnings(piece.value, xml.value.warnings) : piece
}

const withWarnings = (
  piece: PieceRead,
  warnings: readonly Warning[],
): { readonly ok: true; readonly value: PieceRead } => ({
  ok: true,
  value: { ...piece, warnings: [...warnings, ...piece.warnings] },
})
