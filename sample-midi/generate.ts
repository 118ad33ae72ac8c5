/** Writes the sample pieces, their list and the takes beside this file: `npm run samples`. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { cutBars } from '@/music/cutBars'
import { readPiece } from '@/score/readPiece'
import { writeMidiFile, writeTake } from '@/score/writeMidiFile'
import { ms } from '@/music/units'
import { parseSample } from './notation'
import { playTake, takePlans } from './takes'

const here = fileURLToPath(new URL('.', import.meta.url))

/** Every generated file by its path in this folder. */
export const generateSamples = (): ReadonlyMap<string, Uint8Array> => {
  const samples = readdirSync(`${here}pieces`)
    .map((name) => {
      const sample = parseSample(readFileSync(`${here}pieces/${name}`, 'utf8'))
      return { ...sample, file: name.replace('.txt', '.mid') }
    })
    .toSorted((a, b) => a.level - b.level)
  const files = new Map(samples.map(({ file, content }) => [file, writeMidiFile(content)]))
  const list = samples.map(({ file, title, passage }) => ({ file, title, passage }))
  files.set('samples.json', jsonBytes(list))
  for (const plan of takePlans) {
    const piece = readPiece(files.get(plan.piece) ?? new Uint8Array(), plan.piece)
    const chunk = piece.ok && cutBars(piece.value.score, plan.fromBar, plan.toBar, plan.hand)
    if (!chunk) throw new Error(`no passage for ${plan.file}`)
    files.set(`takes/${plan.file}`, writeTake(playTake(chunk, plan), plan.title, ms(0)))
  }
  const takes = takePlans.map((plan) => ({
    file: plan.file,
    title: plan.title,
    piece: plan.piece,
    fromBar: plan.fromBar,
    toBar: plan.toBar,
    hand: plan.hand,
    tempo: plan.tempo,
    repetitions: plan.repetitions.length,
  }))
  return files.set('takes/takes.json', jsonBytes(takes))
}

const jsonBytes = (value: unknown): Uint8Array =>
  Buffer.from(`${JSON.stringify(value, undefined, 2)}\n`)

if (process.argv[1] === fileURLToPath(import.meta.url))
  for (const [path, bytes] of generateSamples()) writeFileSync(here + path, bytes)
