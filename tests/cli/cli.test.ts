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
    ['--import', 'tsx', 'src/cli/cli.ts', ...words],
    { cwd: root, encoding: 'utf8' },
  )
  return { status, out: stdout, err: stderr }
}
const write = (name: string, content: string | Uint8Array): string => {
  const path = join(folder, name)
  writeFileSync(path, content)
  return path
}
/** The answers to some jobs, all in one call. */
const jobs = (verb: string, ...lines: (object | string)[]): unknown[] => {
  const file = write(
    'jobs.jsonl',
    lines.map((l) => (typeof l === 'string' ? l : JSON.stringify(l))).join('\n'),
  )
  const { status, out, err } = cli(verb, '--jobs', file)
  expect([status, err]).toEqual([0, ''])
  return out
    .trim()
    .split('\n')
    .map((line): unknown => JSON.parse(line))
}

const mill = 'sample-midi/morning-at-the-mill.mid'
const run = { piece: mill, hand: 'right', from: 9, to: 9 }
const take = (name: string): string => `sample-midi/takes/run-${name}.mid`

describe('judge', () => {
  test('finds the repetitions of the sample takes and their verdicts', () => {
    const [clean, flawed, several] = jobs(
      'judge',
      ...['clean', 'flawed', 'repetitions'].map((name) => ({ id: name, ...run, take: take(name) })),
    )
    expect(clean).toMatchObject({
      id: 'clean',
      clean: 1,
      flawed: 0,
      brokenOff: 0,
      longestStreak: 1,
    })
    expect(several).toMatchObject({ clean: 5, flawed: 1, brokenOff: 1, longestStreak: 2 })
    expect(several).toMatchObject({
      repetitions: ['clean', 'clean', 'flawed', 'clean', 'brokenOff', 'clean', 'clean'].map(
        (verdict) => ({ verdict }),
      ),
    })
    // G#5 (80) in place of G5 (79) on the third quarter; 1.2 s of stop before B5 (83).
    expect(flawed).toMatchObject({ flawed: 1 })
    const [repetition] = (flawed as { repetitions: Record<string, unknown>[] }).repetitions
    expect(Object.keys(repetition ?? {})).toEqual([
      'startMs',
      'lastOnsetMs',
      'verdict',
      'tempo',
      'flaws',
    ])
    expect(repetition?.['flaws']).toMatchObject([
      { kind: 'wrong', expected: { key: 79, beat: 2 }, played: { key: 80 } },
      { kind: 'hesitation', expected: { key: 83, beat: 3 }, played: { key: 83 } },
    ])
  })
  test('tells people where each flaw is', () => {
    const words = Object.entries(run).flatMap(([name, value]) => [`--${name}`, `${value}`])
    const { status, out } = cli('judge', ...words, '--take', take('flawed'))
    expect(status).toBe(0)
    expect(out).toMatch(/ 1 +0\.5 s {2}flawed, \d+ quarters a minute\n/)
    expect(out).toContain('wrong: G#5 for G5, bar 9, beat 3\n')
    expect(out).toContain('0 clean, 1 flawed, 0 broken off; longest streak 0\n')
  })
  test('judges the keys only when asked to, and at a set tempo when given one', () => {
    const flaws = (answer: unknown): unknown[] =>
      (answer as { repetitions: { flaws: { kind: unknown }[] }[] }).repetitions.flatMap((r) =>
        r.flaws.map((f) => f.kind),
      )
    const at = { ...run, take: take('repetitions'), standard: 'time' }
    const [notes, right, slow] = jobs(
      'judge',
      { id: 1, ...run, take: take('flawed'), standard: 'notes' },
      { id: 2, ...at, tempo: 80 },
      { id: 3, ...at, tempo: 60 },
    )
    expect(flaws(notes)).toEqual(['wrong'])
    expect(right).toMatchObject({ clean: 5, flawed: 1, brokenOff: 1 })
    expect(flaws(right)).toEqual(['wrong'])
    // Played at 80: each repetition runs ahead of a click at 60, the long ones away from it.
    expect(slow).toMatchObject({ clean: 0, flawed: 7, brokenOff: 0 })
    expect(new Set(flaws(slow))).toEqual(new Set(['early', 'drift', 'wrong']))
  })
})

describe('bad input', () => {
  const notMidi = write('notes.txt', 'C D E')
  const cut = write('cut.mid', new Uint8Array([0x4d, 0x54, 0x68, 0x64, 0, 0]))

  test.each([
    [['read'], '--piece is missing.'],
    [['read', 'x.mid'], '“x.mid” is no option: options begin with --.'],
    [['read', '--piece'], '--piece needs a value after it.'],
    [
      ['judge', '--jobs', 'none.jsonl'],
      'none.jsonl: The file cannot be opened (there is none of that name): check its name and path.',
    ],
  ])('on the line %j ends with 2 and one line', (words, line) => {
    expect(cli(...words)).toEqual({ status: 2, out: '', err: `${line}\n` })
  })

  test.each([
    [[], ''],
    [['dance'], 'dance'],
  ])('a verb that there is not (%j) is answered by those that there are', (words, verb) => {
    const { status, out, err } = cli(...words)
    expect([status, out]).toEqual([2, ''])
    expect(err).toMatch(`There is no verb “${verb}”; there are read, judge, exercises`)
    expect(err).toMatch(/^[^\n]*, and --help tells more\.\n$/)
  })

  test('in a job is answered under its id, and the other jobs are done', () => {
    const answers = jobs(
      'judge',
      '{"id": 1, "piece":',
      '[1]',
      { id: 'a', ...run },
      { id: 'b', ...run, take: cut },
      { id: 'c', ...run, take: take('clean'), piece: notMidi },
      { id: 'd', ...run, take: take('clean'), from: 3, to: 99 },
      { id: 'e', ...run, take: take('clean'), from: 9, to: 8 },
      { id: 'f', ...run, take: take('clean'), hand: 'third' },
      { id: 'g', ...run, take: take('clean'), tempo: 'fast' },
      { id: 'h', ...run, take: take('clean'), speed: 3 },
      { id: 'i', ...run, take: take('clean'), standard: ['notes'] },
      { id: 'j', ...run, take: '.' },
      '',
      { id: 'z', ...run, take: take('clean') },
    ) as { id: unknown; error?: string; clean?: number }[]
    expect(answers.map(({ id, error }) => [id, error])).toEqual([
      [null, 'The line is no JSON object.'],
      [null, 'The line is no JSON object.'],
      ['a', '--take is missing.'],
      [
        'b',
        `${cut}: The file is cut short: it ends at byte 6, where the header should go on; copy or export it again.`,
      ],
      [
        'c',
        `${notMidi}: This is neither a Standard MIDI File nor MusicXML (it begins with neither “MThd” nor “<”): export the piece as MusicXML (.musicxml, .mxl) or as a MIDI file (.mid) and choose that.`,
      ],
      ['d', 'The piece has bars 1 to 12: --to must be a whole number from 1 to 12, not “99”.'],
      ['e', '--from 9 comes after --to 8.'],
      ['f', '--hand must be one of both, left, right, not “third”.'],
      ['g', '--tempo must be a number from 5 to 1000, not “fast”.'],
      [
        'h',
        'There is no option --speed; there are --piece, --take, --hand, --from, --to, --tempo, --standard.',
      ],
      ['i', '“standard” must be a word or a number.'],
      ['j', '.: The file cannot be opened (it is a folder): check its name and path.'],
      ['z', undefined],
    ])
    expect(answers.at(-1)?.clean).toBe(1)
  })
})

test('--help tells the verbs and their options', () => {
  const { status, out } = cli('--help')
  expect(status).toBe(0)
  for (const word of ['read', 'judge', '--piece', '--take', '--jobs']) expect(out).toContain(word)
})
