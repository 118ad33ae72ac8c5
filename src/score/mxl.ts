import { failed, ok, type Result } from '@/music/result'
import { readXml } from './readXml'
import type { ReadProblem } from './readProblem'
import type { Warning } from './warning'
import { decodeXml } from './xmlText'
import { broken, listZip, unpack, type ZipEntry } from './zip'

/** ZIP archives begin with their first file, or, with none in them, with the end record. */
export const looksLikeZip = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 && bytes[1] === 0x4b && (bytes[2] === 3 || bytes[2] === 5)

/** The score in an archive, and what the person should know about how it was found. */
export interface ScoreFile {
  readonly bytes: Uint8Array
  readonly warnings: readonly Warning[]
}

/**
 * The MusicXML file in a compressed one (.mxl): META-INF/container.xml names it as the first root
 * file (MusicXML 4.0, “Compressed MXL files”). Where the container is missing, the only score in
 * the archive is taken.
 */
export const openMxl = (bytes: Uint8Array): Result<ScoreFile, ReadProblem> => {
  const entries = listZip(bytes)
  if (!entries.ok) return entries
  const container = entries.value.find(({ name }) => name === 'META-INF/container.xml')
  if (!container) return openOnlyScore(bytes, entries.value)
  const listed = unpack(bytes, container)
  if (!listed.ok) return listed
  const root = readContainer(listed.value)
  if (!root.ok) return root
  const entry = entries.value.find(({ name }) => name === root.value)
  if (!entry) return failed(broken({ kind: 'namesAbsent', name: root.value }))
  const score = unpack(bytes, entry)
  return score.ok ? ok({ bytes: score.value, warnings: [] }) : score
}

const openOnlyScore = (
  bytes: Uint8Array,
  entries: readonly ZipEntry[],
): Result<ScoreFile, ReadProblem> => {
  const scores = entries.filter(
    ({ name }) => /\.(musicxml|xml)$/i.test(name) && !/^(META-INF|__MACOSX)\//.test(name),
  )
  const [only] = scores
  if (!only || scores.length > 1) return failed({ kind: 'noScoreInArchive', scores: scores.length })
  const score = unpack(bytes, only)
  if (!score.ok) return score
  return ok({ bytes: score.value, warnings: [{ kind: 'onlyScore', name: only.name }] })
}

/** The types under which a root file is MusicXML; others hold the same score as a picture or a sound. */
const scoreTypes = /^application\/(vnd\.recordare\.musicxml(\+xml)?|xml)$|^text\/xml$/

const readContainer = (bytes: Uint8Array): Result<string, ReadProblem> => {
  const xml = decodeXml(bytes)
  if (!xml.ok) return xml
  const paths: string[] = []
  const problem = readXml(xml.value.text, {
    open: (name, attributes) => {
      const type = attributes['media-type']
      if (name === 'rootfile' && (type === undefined || scoreTypes.test(type)))
        paths.push(attributes['full-path'] ?? '')
      return 'enter'
    },
    take: () => undefined,
  })
  if (problem) return failed(broken({ kind: 'brokenContents' }))
  const [path] = paths
  if (!path) return failed(broken({ kind: 'namesNone' }))
  return isPathInside(path) ? ok(path) : failed(broken({ kind: 'namesOutside' }))
}

const isPathInside = (path: string): boolean =>
  path.length <= 1024 && !/^[/\\]|^[a-z]:|(^|[/\\])\.\.([/\\]|$)/i.test(path)
