import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))
const spots = (...words: string[]): { status: number | null; out: string; err: string } => {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', 'tsx', 'src/cli/cli.ts', 'spots', ...words],
    { cwd: root, encoding: 'utf8' },
  )
  return { status, out: stdout, err: stderr }
}

interface Answer {
  readonly difficulty: number
  readonly uncertainty: number
  readonly spots: readonly {
    readonly fromBar: number
    readonly toBar: number
    readonly fromBeat: number
    readonly toBeat: number
    readonly hand: string
    readonly difficulty: number
    readonly reasons: readonly string[]
    readonly practise: readonly string[]
  }[]
}
const mill = 'sample-midi/morning-at-the-mill.mid'
const answer = (...words: string[]): Answer => JSON.parse(spots(...words, '--json').out) as Answer

describe('spots', () => {
  test('finds the run of the mill, its hand and its reason', () => {
    const { difficulty, spots: all } = answer('--piece', mill)
    const [hardest] = all
    expect(hardest).toMatchObject({ fromBar: 9, toBar: 11, hand: 'right' })
    expect(hardest?.reasons[0]).toBe('fast: 2.9 onsets a second')
    expect(hardest?.practise).toHaveLength(hardest?.reasons.length ?? NaN)
    expect(difficulty).toBeGreaterThan(0)
    expect(all.map((spot) => spot.difficulty)).toEqual(
      all.map((spot) => spot.difficulty).toSorted((a, b) => b - a),
    )
  })
  test('counts beats as read does', () => {
    for (const spot of answer('--piece', mill).spots) {
      expect(Math.floor(spot.fromBeat / 4) + 1).toBe(spot.fromBar)
      expect(Math.ceil(spot.toBeat / 4)).toBe(spot.toBar)
    }
  })
  test('is harder faster', () => {
    const [slow, fast] = ['60', '120'].map((n) => answer('--piece', mill, '--tempo', n).difficulty)
    expect(fast).toBeGreaterThan(slow ?? NaN)
  })
  test('tells people bar by bar, with ways to practise', () => {
    const { out } = spots('--piece', 'sample-midi/wind-across-the-weir.mid')
    expect(out).toMatch(
      /^difficulty about [\d.]+, give or take [\d.]+; \d+ points a second in its hard places; [\d.]+ times by its length\nbars? /,
    )
    expect(out).toMatch(/3 against 2 \(tap both hands on the lid/)
  })
  test.each([
    [[], '--piece is missing.'],
    [['--piece', mill, '--tempo', '0'], '--tempo must be a number from 5 to 1000, not “0”.'],
    [
      ['--piece', mill, '--span', 'tenth'],
      '--span must be one of small, medium, large, not “tenth”.',
    ],
  ])('refuses %j in one line', (words, line) => {
    expect(spots(...words)).toEqual({ status: 2, out: '', err: `${line}\n` })
  })
})
