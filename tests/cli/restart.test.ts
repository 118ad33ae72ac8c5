import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { judge } from '@/cli/judge'
import { ms } from '@/music/units'
import { writeTake as writeTakeFile } from '@/score/writeMidiFile'
import { writeTake } from '../judge/notation'
import { sampleOf } from '../support/atTheDesk'

/** 'flawed restart@62 | clean': the verdicts with kinds and played keys of the flaws, as the JSON has them. */
const judged = (chunk: string, played: string): string => {
  const folder = mkdtempSync(join(tmpdir(), 'passagework-'))
  writeFileSync(join(folder, 'a.mid'), sampleOf('Piece', chunk).bytes)
  writeFileSync(join(folder, 'take.mid'), writeTakeFile(writeTake(played), 'Take', ms(0)))
  const answer = judge(
    new Map([
      ['piece', join(folder, 'a.mid')],
      ['take', join(folder, 'take.mid')],
    ]),
  )
  if (!answer.ok) throw new Error(answer.reason)
  const { repetitions } = answer.value.json as {
    repetitions: { verdict: string; flaws: { kind: string; played: { key: number } | null }[] }[]
  }
  return repetitions
    .map(({ verdict, flaws }) =>
      [verdict, ...flaws.map((f) => `${f.kind}@${f.played?.key ?? '-'}`)].join(' '),
    )
    .join(' | ')
}

test.each([
  ['back to the start', 'C4 D4 300 C4 D4 E4 F4', 'brokenOff restart@60 restart@62 | clean'],
  [
    'back to the start after a wrong key',
    'C4 D#4 300 C4 D4 E4 F4',
    'flawed wrong@63 restart@60 | clean',
  ],
  ['back inside', 'C4 D4 E4 400 D4 E4 F4', 'flawed restart@62 restart@62 restart@64'],
  ['twice through', 'C4 D4 E4 F4 800 C4 D4 E4 F4', 'clean | clean'],
  ['left for good', 'C4 D4 9000 C4 D4 E4 F4', 'brokenOff | clean'],
])('%s: every strike that was given up is listed', (_, played, expected) => {
  expect(judged('C4 D4 E4 F4', played)).toBe(expected)
})
