/**
 * `npm run -s live -- FILE`: how many marks were right at the moment of the key, on recorded takes.
 * FILE has one JSON object a line, with the options of `cli judge` (piece, take, hand, from, to, standard).
 */
import { readFileSync } from 'node:fs'
import { loadPiece, loadTake } from '@/cli/files'
import { choiceOf, parseJob, wordOf } from '@/cli/options'
import { choosePassage } from '@/cli/passage'
import { replayTake } from '@/judge/replay'
import { addUp, compareMarks, type Agreement } from '../judge/liveMarks'

const standards = ['notes', 'flow', 'time'] as const

const agreementOf = (line: string): Agreement => {
  const { options } = parseJob(line)
  if (!options.ok) throw new Error(options.reason)
  const [piecePath, takePath] = [wordOf(options.value, 'piece'), wordOf(options.value, 'take')]
  const standard = choiceOf(options.value, 'standard', standards)
  const piece = piecePath.ok ? loadPiece(piecePath.value) : piecePath
  const take = takePath.ok ? loadTake(takePath.value) : takePath
  const chunk = piece.ok ? choosePassage(piece.value.score, options.value) : piece
  for (const each of [standard, take, chunk]) if (!each.ok) throw new Error(each.reason)
  if (!standard.ok || !take.ok || !chunk.ok) throw new Error('unreachable')
  const settings = { standard: standard.value, forgiveBrushed: false }
  return compareMarks(replayTake(chunk.value, settings, take.value).findings)
}

const [path] = process.argv.slice(2)
if (path === undefined)
  throw new Error('npm run -s live -- FILE: the file with the jobs is missing')
const lines = readFileSync(path, 'utf8')
  .split('\n')
  .filter((line) => line.trim() !== '')
const { marks, atOnce, slandered } = lines
  .map(agreementOf)
  .reduce(addUp, { marks: 0, atOnce: 0, slandered: 0 })
const share = (n: number): string => `${((100 * n) / Math.max(1, marks)).toFixed(3)} %`
console.log(`${lines.length} takes, ${marks} keys`)
console.log(`right at the moment of the key: ${share(atOnce)}`)
console.log(`played right and shown as false meanwhile: ${slandered} (${share(slandered)})`)
