import tonejs from '@tonejs/midi'
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { cutBars } from '@/music/cutBars'
import type { Score } from '@/music/music'
import { readPiece } from '@/score/readPiece'
import { readTake } from '@/score/readTake'
import samples from '@samples/samples.json'
import takes from '@samples/takes/takes.json'
import { generateSamples } from '@samples/generate'
import { parseSample } from '@samples/notation'

const bytesOf = (path: string): Uint8Array =>
  new Uint8Array(readFileSync(fileURLToPath(new URL(`../../sample-midi/${path}`, import.meta.url))))
const scoreOf = (file: string): Score => {
  const piece = readPiece(bytesOf(file), file)
  if (!piece.ok) throw new Error(JSON.stringify(piece.reason))
  expect(piece.value.warnings).toEqual([])
  return piece.value.score
}
const passageOf = (hand: string): 'left' | 'right' | 'both' =>
  hand === 'left' || hand === 'right' ? hand : 'both'

test('generating again gives the same bytes', () => {
  const files = generateSamples()
  expect(files.size).toBe(10)
  for (const [path, bytes] of files) expect([path, [...bytes]]).toEqual([path, [...bytesOf(path)]])
})

describe.each(samples)('$title', ({ file, title, passage }) => {
  const score = scoreOf(file)
  test('is read whole, with both hands as the file says', () => {
    expect(score.title).toBe(title)
    expect(score.bars.length).toBeGreaterThanOrEqual(8)
    expect(score.bars.length).toBeLessThanOrEqual(24)
    expect(new Set(score.notes.map((n) => `${n.hand} ${n.handFrom}`))).toEqual(
      new Set(['right file', 'left file']),
    )
    expect(score.keys).toHaveLength(1)
  })
  test('has its first passage of 3 to 10 onsets', () => {
    const { fromBar, toBar, hand } = passage
    const chunk = cutBars(score, fromBar, toBar, passageOf(hand))
    expect(chunk?.onsets.length).toBeGreaterThanOrEqual(3)
    expect(chunk?.onsets.length).toBeLessThanOrEqual(10)
  })
  test('is read alike by another reader (the npm package @tonejs/midi)', () => {
    const midi = new tonejs.Midi(bytesOf(file))
    const theirs = midi.tracks.flatMap((track) =>
      track.notes.map((n) => `${n.ticks}+${n.durationTicks} ${n.midi} ${track.name}`),
    )
    const ours = score.notes.map((n) => `${n.start}+${n.length} ${n.key} ${n.hand} hand`)
    expect(ours.toSorted()).toEqual(theirs.toSorted())
    expect(score.tempos.map((t) => t.tempo.toFixed(3))).toEqual(
      midi.header.tempos.map((t) => t.bpm.toFixed(3)),
    )
    expect(score.keys[0]?.mode).toBe(midi.header.keySignatures[0]?.scale)
  })
})

describe('the samples together', () => {
  const scores = samples.map(({ file }) => scoreOf(file))
  test('have five keys, four time signatures, one pickup and one change of tempo', () => {
    expect(new Set(scores.map((s) => `${s.keys[0]?.fifths} ${s.keys[0]?.mode}`)).size).toBe(5)
    const times = scores.map((s) => `${s.bars[1]?.time.beats}/${s.bars[1]?.time.beatType}`)
    expect(new Set(times)).toEqual(new Set(['4/4', '3/4', '2/4', '6/8']))
    expect(scores.filter((s) => s.bars[0]?.number === 0)).toHaveLength(1)
    expect(scores.filter((s) => s.tempos.length > 1)).toHaveLength(1)
  })
})

test('each take plays the notes of its passage, in each repetition that is whole', () => {
  for (const plan of takes) {
    const take = readTake(bytesOf(`takes/${plan.file}`))
    const chunk = cutBars(scoreOf(plan.piece), plan.fromBar, plan.toBar, passageOf(plan.hand))
    const struck = take.ok ? take.value.events.filter((e) => e.kind === 'down').length : 0
    const brokenOff = plan.file === 'run-repetitions.mid' ? 4 : 0
    expect(struck).toBe((chunk?.onsets.length ?? 0) * plan.repetitions - brokenOff)
  }
})

describe('the text of a sample', () => {
  const text = (bars: string): string =>
    `title A\nlevel 1\npassage bars 1 to 1, both hands, goal 60\ntime 3/4\nkey D minor\ntempo 1: 60, 2: 90\n\n${bars}`
  test('gives notes, marks and a pickup', () => {
    const { content } = parseSample(
      text('0 | 8 C4 D4 | 4 r\n1 | mf 4 E4+G4 2 r | 2. C3\n2 | 2. C4 | 8t C3 D3 E3 2 r'),
    )
    expect(content.times.map(({ start, time }) => [start, time.beats])).toEqual([
      [0, 1],
      [480, 3],
    ])
    expect(content.tempos).toEqual([
      { start: 0, tempo: 60 },
      { start: 1920, tempo: 90 },
    ])
    expect(content.keys).toEqual([{ start: 0, fifths: -1, mode: 'minor' }])
    expect(content.tracks[0]?.notes.map((n) => `${n.start}+${n.length} ${n.key}`)).toEqual([
      '0+240 60',
      '240+240 62',
      '480+480 64',
      '480+480 67',
      '1920+1440 60',
    ])
    expect(content.tracks[1]?.notes.at(-1)).toMatchObject({ start: 2240, length: 160, key: 52 })
  })
  test.each([
    ['1 | 4 C4 | 2. C3', 'unequal'],
    ['1 | 2 C4 | 2 C3', '960 ticks long'],
    ['1 | 2. H4 | 2. C3', 'no key: H4'],
    ['1 | 3 C4 | 2. C3', 'no note value: 3'],
  ])('with a slip in it (%s) is not taken', (bars, why) => {
    expect(() => parseSample(text(bars))).toThrow(why)
  })
})
