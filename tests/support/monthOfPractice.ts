import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { layOut } from '@/app/layOut'
import type { JournalEvent } from '@/journal/journal'
import type { Score } from '@/music/music'
import { tempo } from '@/music/units'
import { readWithHands } from '../../src/readWithHands'
import { createPianist, natureOf } from '../plan/pianist'
import { emptyRecord, practiseDay } from '../plan/practise'

const dayMs = 86_400_000

/** The score of a sample. */
export const sampleScore = (fileName: string): Score => {
  const path = fileURLToPath(new URL(`../../sample-midi/${fileName}`, import.meta.url))
  const piece = readWithHands(readFileSync(path), fileName)
  if (!piece.ok) throw new Error(`${fileName} cannot be read`)
  return piece.value.score
}

/**
 * A month of practice at two samples, half an hour on six days of seven after the plan itself, by a
 * simulated pianist who learns well (pianist.ts). Ends on the day before `today`, an instant; but for that
 * shift the same each time.
 */
export const monthOfPractice = (today: number): readonly JournalEvent[] => daysOfPractice(30, today)

/** So many days of it. */
export const daysOfPractice = (days: number, today: number): readonly JournalEvent[] => {
  const desks = ['ferry-at-dusk.mid', 'morning-at-the-mill.mid'].map((fileName, i) => {
    const score = sampleScore(fileName)
    const layout = layOut(score, tempo(i === 0 ? 72 : 104), { said: [], order: [] }, 'medium')
    return { layout, pianist: createPianist(7 + i, score, { ...natureOf(7), growth: 0.09 }) }
  })
  let record = emptyRecord
  const events: JournalEvent[] = []
  for (let day = 0; day < days; day++) {
    if (day % 7 === 6) continue
    const practised = practiseDay(desks, record, day, { minutes: 30, seed: 1 })
    record = practised.record
    events.push(...practised.events)
  }
  // Noon of the day after, as the simulation has it: 2026-01-05 is its day 0.
  const end = Date.UTC(2026, 0, 5 + days, 12)
  const shift = Math.round((today - end) / dayMs) * dayMs
  return events.map((event) => ({ ...event, atEpochMs: event.atEpochMs + shift }))
}
