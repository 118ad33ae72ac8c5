import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, test } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))
const folder = mkdtempSync(join(tmpdir(), 'passagework-'))
afterAll(() => rmSync(folder, { recursive: true }))

const cli = (...words: string[]): { status: number | null; out: string; err: string } => {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', 'tsx', 'src/cli/cli.ts', 'exercises', ...words],
    { cwd: root, encoding: 'utf8' },
  )
  return { status, out: stdout, err: stderr }
}

interface Told {
  readonly onsets: number
  readonly minutes: number
  readonly exercises: readonly {
    readonly number: number
    readonly what: string
    readonly size: number
    readonly hand: string
    readonly form: string
    readonly fromBar: number
    readonly why: string
    readonly onsets: readonly { readonly beat: number; readonly keys: readonly number[] }[]
  }[]
  readonly variants: readonly {
    readonly form: string
    readonly chunk: string
    readonly purpose: string
    readonly onsets: readonly { readonly beat: number }[]
  }[]
}

const mill = 'sample-midi/morning-at-the-mill.mid'
/** A run of eight sixteenths, C5 to C6, of the right hand. */
const run = { piece: mill, from: 9, to: 9, hand: 'right' }

describe('exercises', () => {
  const file = join(folder, 'jobs.jsonl')
  const jobs = [
    { id: 'thorough', ...run },
    { id: 'brisk', ...run, thoroughness: 'brisk' },
    { id: 'both', ...run, from: 8, hand: 'both', direction: 'fromTheEnd' },
    { id: 'slow', ...run, tempo: 40 },
    { id: 'none', piece: mill, from: 9, to: 99 },
    { id: 'odd', ...run, thoroughness: 'lazy' },
    { id: 'wide', ...run, span: 99 },
    { id: 'strange', ...run, speed: 3 },
  ]
  writeFileSync(file, jobs.map((job) => JSON.stringify(job)).join('\n'))
  const { status, out, err } = cli('--jobs', file)
  const answers = new Map(
    out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as Told & { id: string; error?: string })
      .map((answer) => [answer.id, answer]),
  )
  const told = (id: string): Told => {
    const answer = answers.get(id)
    if (!answer) throw new Error(id)
    return answer
  }

  test('answers every job', () => {
    expect([status, err, answers.size]).toEqual([0, '', jobs.length])
  })

  test('a run of one hand grows from three notes to the whole', () => {
    const { onsets, exercises } = told('thorough')
    expect(onsets).toBe(8)
    expect(exercises.map(({ number }) => number)).toEqual(exercises.map((_, i) => i + 1))
    expect(exercises[0]).toMatchObject({
      what: 'group',
      size: 3,
      hand: 'right',
      form: 'asWritten',
      fromBar: 9,
      why: 'So few notes can be right at once.',
    })
    expect(exercises[0]?.onsets.map(({ keys }) => keys)).toEqual([[72], [74], [76]])
    expect(exercises.at(-1)).toMatchObject({ what: 'whole', size: 8, form: 'asWritten' })
  })

  test('brisk is shorter; a slower goal takes longer', () => {
    expect(told('brisk').exercises.length).toBeLessThan(told('thorough').exercises.length)
    expect(told('brisk').minutes).toBeLessThan(told('thorough').minutes)
    expect(told('slow').minutes).toBeGreaterThan(told('thorough').minutes)
  })

  test('both hands end together', () => {
    const hands = told('both').exercises.map(({ hand }) => hand)
    expect(new Set(hands)).toEqual(new Set(['right', 'left', 'both']))
    expect(hands.at(-1)).toBe('both')
  })

  test('the variants have exact onsets and say what they are for', () => {
    const { variants } = told('thorough')
    const dotted = variants.find(({ form }) => form === 'longShort')
    const [first, second, third] = dotted?.onsets ?? []
    const written = variants[0]?.onsets ?? []
    expect(variants[0]?.form).toBe('asWritten')
    expect(first?.beat).toBe(0)
    expect(second?.beat).toBe(1.5 * (written[1]?.beat ?? 0))
    expect(third?.beat).toBe(written[2]?.beat)
    expect(dotted?.chunk).toBe(`${variants[0]?.chunk}~longShort`)
    expect(dotted?.purpose).toMatch(/^Every second step is quick/)
  })

  test.each([
    ['none', 'The piece has bars 1 to 12: --to must be a whole number from 1 to 12, not “99”.'],
    ['odd', '--thoroughness must be one of thorough, brisk, not “lazy”.'],
    ['wide', '--span must be a whole number from 5 to 24, not “99”.'],
    [
      'strange',
      'There is no option --speed; there are --piece, --from, --to, --hand, --thoroughness, --direction, --span, --tempo.',
    ],
  ])('%s is refused: %s', (id, message) => {
    expect(answers.get(id)?.error).toBe(message)
  })

  test('people read it stage by stage', () => {
    const { out: text } = cli('--piece', mill, '--from', '9', '--to', '9', '--hand', 'right')
    const lines = text.split('\n')
    expect(lines[0]).toMatch(
      /^8 onsets, right hand, thorough: 12 exercises, about \d+ minutes up to 88 quarters a minute\.$/,
    )
    expect(lines.slice(1, 4)).toEqual([
      'Stage 1: 3 clean in a row, at 55 % of the goal tempo',
      '  1. group of 3, right hand, bar 9: C5 D5 E5. So few notes can be right at once.',
      '  2. group of 3, right hand, bar 9: E5 F5 G5.',
    ])
    expect(text).toContain('whole, longShort, right hand, bar 9: 8 onsets. Every second step')
  })
})
