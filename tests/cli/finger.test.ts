import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, test } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))
const folder = mkdtempSync(join(tmpdir(), 'passagework-'))
afterAll(() => rmSync(folder, { recursive: true }))

const finger = (...words: string[]): { status: number | null; out: string; err: string } => {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', 'tsx', 'src/cli/cli.ts', 'finger', ...words],
    { cwd: root, encoding: 'utf8' },
  )
  return { status, out: stdout, err: stderr }
}

const mill = 'sample-midi/morning-at-the-mill.mid'
const swallows = 'sample-midi/swallows-under-the-eaves.mid'

/** Quarters of one staff with the fingering of MusicXML 4.0, a dot where none is printed. */
const writePiece = (pitches: string, digits: string): string => {
  const notes = pitches.split(' ').map((pitch, i) => {
    const digit = digits[i] ?? '.'
    const technical = `<notations><technical><fingering>${digit}</fingering></technical></notations>`
    return `<note><pitch><step>${pitch[0]}</step><octave>${pitch.slice(1)}</octave></pitch><duration>1</duration><type>quarter</type>${digit === '.' ? '' : technical}</note>`
  })
  const path = join(folder, `${digits}.musicxml`)
  writeFileSync(
    path,
    `<score-partwise version="4.0"><part-list><score-part id="P1"><part-name>Piano</part-name></score-part></part-list><part id="P1"><measure number="1"><attributes><divisions>1</divisions><time><beats>${notes.length}</beats><beat-type>4</beat-type></time></attributes>${notes.join('')}</measure></part></score-partwise>`,
  )
  return path
}

describe('finger', () => {
  // Fragment A of Parncutt, Sloboda, Clarke, Raekallio & Desain 1997 and its best total.
  test('gives the published fingering and cost where the last digit is printed', () => {
    const piece = writePiece('E5 G5 F5 G5 E5 F5 D5 E5', '.......3')
    const { status, out } = finger('--piece', piece, '--hand', 'right', '--json')
    const answer = JSON.parse(out) as {
      notes: { key: number; beat: number; finger: number }[]
      cost: number
    }
    expect([status, answer.cost]).toEqual([0, 6])
    expect(answer.notes.map((note) => note.finger)).toEqual([2, 4, 3, 4, 2, 3, 1, 3])
    expect(answer.notes.slice(0, 2)).toEqual([
      { key: 76, beat: 0, finger: 2 },
      { key: 79, beat: 1, finger: 4 },
    ])
  })

  test('counts beats as read does: an upbeat is negative', () => {
    const words = ['--piece', swallows, '--hand', 'right', '--from', '0', '--to', '1', '--json']
    const { notes } = JSON.parse(finger(...words).out) as { notes: { beat: number }[] }
    expect(notes.slice(0, 5).map(({ beat }) => beat)).toEqual([-1, -1, -0.5, -0.5, 0])
  })

  test('tells people bar by bar, and what else there is', () => {
    const { status, out } = finger('--piece', mill, '--hand', 'right', '--from', '1', '--to', '1')
    expect(status).toBe(0)
    expect(out.split('\n').slice(0, 2)).toEqual([
      'bar 1: C5 1, D5 2, E5 3, F5 4, G5 5, E5 3',
      expect.stringMatching(/^cost \d+$/),
    ])
    expect(out).toMatch(/another costs \d+: [a-z ,]+/)
  })

  test.each([
    [['--piece', mill], '--hand is missing.'],
    [['--piece', mill, '--hand', 'both'], '--hand must be one of right, left, not “both”.'],
    [
      ['--piece', mill, '--hand', 'left', '--span', 'wide'],
      '--span must be one of small, medium, large, not “wide”.',
    ],
    [['--hand', 'left'], '--piece is missing.'],
  ])('refuses %j in one line', (words, line) => {
    expect(finger(...words)).toEqual({ status: 2, out: '', err: `${line}\n` })
  })
})
