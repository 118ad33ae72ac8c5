import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { judge } from '@/cli/judge'
import { melody, play, sampleOf, sitDown } from '../support/atTheDesk'
import { createDesk } from '../support/fakePorts'

/** Clean, every kind of key error, a restart, a stop and one broken off, with the metronome at times. */
const evening = async (): Promise<{ readonly journal: string; readonly piece: Uint8Array }> => {
  const sample = sampleOf('First', melody)
  const desk = createDesk([sample])
  const app = await sitDown(desk)
  const played = [melody, 'C4 D#4 E4 F4', 'C4 E4 F4', 'C4 D4 D4 E4 F4', 'C4 D4 C4 D4 E4 F4', melody]
  for (const standard of ['notes', 'flow', 'time'] as const) {
    app.changeSettings({ standard, forgiveBrushed: standard === 'notes' })
    for (const names of played) await play(desk, names)
    await app.practice.toggleMetronome()
  }
  desk.strike(60)
  desk.pass(20_000)
  await app.records.save()
  const [journal] = desk.saved.values()
  return { journal: journal ?? '', piece: sample.bytes }
}

const inFiles = (journal: string, piece: Uint8Array): ReadonlyMap<string, string> => {
  const folder = mkdtempSync(join(tmpdir(), 'passagework-'))
  writeFileSync(join(folder, 'a.jsonl'), journal)
  writeFileSync(join(folder, 'a.mid'), piece)
  return new Map([
    ['journal', join(folder, 'a.jsonl')],
    ['piece', join(folder, 'a.mid')],
  ])
}

test('the stored takes of a saved record are judged again as they were judged', async () => {
  const { journal, piece } = await evening()
  const answer = judge(inFiles(journal, piece))
  expect(answer.ok && answer.value.json).toMatchObject({ different: 0, otherPieces: 0, unread: 0 })
  const verdicts = (answer.ok ? answer.value.json : {}) as { repetitions: { judged: string }[] }
  expect(new Set(verdicts.repetitions.map((r) => r.judged))).toEqual(
    new Set(['clean', 'flawed', 'brokenOff']),
  )
})

test('where the record says otherwise than this judge, the repetition is named', async () => {
  const { journal, piece } = await evening()
  const other = journal.replace('"verdict":"clean"', '"verdict":"brokenOff"')
  const answer = judge(inFiles(other, piece))
  expect(answer.ok && answer.value.json).toMatchObject({ different: 1 })
  expect(answer.ok && answer.value.text()).toMatch(
    /^2026-01-05 19:00:\d\d  recorded: brokenOff; this judge: clean\n\d+ judged as recorded, 1 otherwise$/,
  )
})

test('a journal without the piece is left out and counted', async () => {
  const { journal } = await evening()
  const answer = judge(inFiles(journal, sampleOf('Another', 'G4 A4 B4 C5').bytes))
  expect(answer.ok && answer.value.text()).toMatch(
    /^0 judged as recorded, 0 otherwise; \d+ of other/,
  )
})
