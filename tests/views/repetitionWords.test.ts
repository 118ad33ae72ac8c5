import { afterEach, describe, expect, test } from 'vitest'
import type { RepetitionList } from '@/app/repetitionList'
import { german } from '@/german/german'
import { parseDay, type Day } from '@/journal/day'
import { key, pieceId, tempo } from '@/music/units'
import type { Asked } from '@/review/asked'
import { chunkStateNames } from '@/review/chunkStates'
import { speak, type Language } from '@/text/text'
import { conditionsOf } from '@/views/repetitionWords'
import { writeScore } from '../music/writeScore'

const score = writeScore({ right: 'C5 D5 E5 F5 G5 F#5 E5 D5' })
const [first, , third] = score.notes.map(({ id }) => id)
const list: RepetitionList = {
  score,
  titles: new Map([[pieceId('p1'), 'Morning Steps']]),
  chunks: [],
  days: [],
  read: () => Promise.resolve({ ok: true, value: { days: [], next: 0 } }),
}
const day = (text: string): Day => {
  const parsed = parseDay(text)
  if (!parsed) throw new Error(`${text} is no day`)
  return parsed
}

const told = (asked: Asked, language: Language): string => {
  speak(language, language === 'de' ? german : {})
  return conditionsOf(asked, list)
    .map(({ words }) => words)
    .join(' · ')
}
afterEach(() => speak('en'))

const span = { from: day('2026-05-01'), to: day('2026-05-03') }
const over = { ...(first && third ? { note: first, until: third } : {}), flaw: 'drift' } as const

test.each<[Asked, string, string]>([
  [
    { piece: pieceId('p1'), verdict: 'flawed' },
    'Morning Steps · flawed',
    'Morning Steps · fehlerhaft',
  ],
  [
    { ended: true, ...span },
    '1 May 2026 to 3 May 2026 · clean or flawed',
    '1. Mai 2026 bis 3. Mai 2026 · fehlerfrei oder fehlerhaft',
  ],
  [
    { from: span.from, rung: tempo(72) },
    'from 1 May 2026 on · at 72',
    'ab dem 1. Mai 2026 · bei Tempo 72',
  ],
  [over, 'tempo drifts · over bar 1, beats 1–3', 'Tempo verändert sich · über Takt 1, Schläge 1–3'],
  [first ? { note: first } : {}, 'at C5 in bar 1, beat 1', 'bei C5 in Takt 1, Schlag 1'],
  [{ written: key(76), played: key(75) }, 'E♭5 for E5', 'Es5 statt E5'],
  [
    { bar: 1, overruled: 'pause' },
    'with a flaw in bar 2 · then a pause not taken',
    'mit einem Fehler in Takt 2 · danach: eine Pause nicht gemacht',
  ],
])('%j is told as %s, or %s', (asked, english, deutsch) => {
  expect([told(asked, 'en'), told(asked, 'de')]).toEqual([english, deutsch])
})

describe('what made a chunk what it is', () => {
  test.each(chunkStateNames)('%s has words of its own in each language', (state) => {
    const [english, deutsch] = [told({ state }, 'en'), told({ state }, 'de')]
    expect(english).toMatch(/chunk/)
    expect(deutsch).toMatch(/Ausschnitt/)
  })
})

test('taken away, a stretch goes with its first note', () => {
  const [, stretch] = conditionsOf(over, list)
  expect(stretch?.without).toEqual({ flaw: 'drift' })
})
