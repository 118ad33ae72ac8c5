import { execFileSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import type { Measure } from './measure'

interface Measured {
  readonly repetitions: number
  readonly packMs: number
  readonly sumMs: number
  readonly countMs: number
  readonly openMs: number
  readonly pieceMs: number
  readonly bytes: number
  readonly peakMb: number
  readonly openMb: number
}

/** A journal of ten years: packing and summing it, and opening the review from what was kept. */
export const benchJournal = (): readonly Measure[] => {
  const script = fileURLToPath(new URL('./journalOnce.ts', import.meta.url))
  const words = ['--expose-gc', '--import', 'tsx', script]
  const printed = execFileSync(process.execPath, words, { encoding: 'utf8' })
  const of = JSON.parse(printed) as Measured
  const each = (ms: number): number => (ms * 1000) / of.repetitions
  const years = `ten years, ${of.repetitions.toLocaleString('en')} repetitions`
  return [
    { name: `review of ${years}`, value: of.openMs, unit: 'ms', budget: 1000 },
    { name: 'review of one piece of them', value: of.pieceMs, unit: 'ms', budget: 1000 },
    { name: 'memory of that review', value: of.openMb, unit: 'MB', budget: 200 },
    { name: 'most memory while packing them', value: of.peakMb, unit: 'MB', budget: 200 },
    {
      name: 'kept sums against counting anew',
      value: of.openMs / of.countMs,
      unit: 'times',
      budget: 0.1,
    },
    { name: 'counting anew from blocks', value: of.countMs, unit: 'ms' },
    { name: 'packing, a repetition', value: each(of.packMs), unit: 'µs' },
    { name: 'summing, a repetition', value: each(of.sumMs), unit: 'µs' },
    { name: 'a packed repetition of eight notes', value: of.bytes, unit: 'bytes' },
  ]
}
