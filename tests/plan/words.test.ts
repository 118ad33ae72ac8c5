import { afterEach, describe, expect, test } from 'vitest'
import { german } from '@/german/german'
import { sayDistance, sayHonestly, type HonestWord } from '@/plan/honest'
import { sayReason, type ItemReason } from '@/plan/itemReason'
import { planText } from '@/text/plan'
import { speak } from '@/text/text'

afterEach(() => speak('en'))

const exercise = { what: 'whole', size: 12 } as const
const above: HonestWord = {
  kind: 'above',
  times: 1.45,
  months: { value: 1, low: 0.6, high: 1.4 },
  ways: [],
}

describe('the plan in English and in German', () => {
  test.each<readonly [ItemReason, string, string]>([
    [
      { kind: 'checkSecure', days: 1 },
      'Secure yesterday: once through, cold, to see whether it is kept.',
      'Sicher seit gestern: einmal kalt, ob es behalten ist.',
    ],
    [
      { kind: 'checkSlipped', days: 4 },
      'It slipped 4 days ago: once through, cold, to see whether it is back.',
      'Vor 4 Tagen wieder unsicher geworden: einmal kalt, ob es wieder da ist.',
    ],
    [
      { kind: 'fresh', exercise, wentWrong: false, isHardSpot: true, hard: { kind: 'thumb' } },
      'New: the whole first; thumb passings.',
      'Neu: zuerst das Ganze; Daumenuntersätze.',
    ],
    [
      { kind: 'next', exercise, wentWrong: true, isHardSpot: true },
      'It went wrong in the run-through. Next: the whole; a hard spot.',
      'Beim Durchspielen ging es schief. Als Nächstes: das Ganze; eine schwere Stelle.',
    ],
  ])('why an item is played: %j', (reason, english, inGerman) => {
    expect(sayReason(reason)).toBe(english)
    speak('de', german)
    expect(sayReason(reason)).toBe(inGerman)
  })

  test('what today holds, of one and of several', () => {
    const one = { minutes: 1, places: 1, checks: 1, runs: 0, rests: 0 }
    const several = { minutes: 35, places: 2, checks: 3, runs: 1, rests: 1 }
    const { counts } = planText.today
    expect(counts(one)).toBe('A minute: 1 place in turn, 1 cold check.')
    expect(counts(several)).toBe(
      '35 minutes: 2 places in turn, 3 cold checks, a run-through at the end, 1 rest.',
    )
    speak('de', german)
    expect(planText.today.counts(one)).toBe('Eine Minute: 1 Stelle im Wechsel, 1 Kaltprobe.')
    expect(planText.today.counts(several)).toBe(
      '35 Minuten: 2 Stellen im Wechsel, 3 Kaltproben, zum Schluss einmal durchspielen, 1 Pause.',
    )
  })

  test('how far a piece stands above the record: a month is said as one', () => {
    expect(sayDistance(above)).toContain('(1.4 times as difficult at its hardest)')
    expect(sayDistance(above)).toContain('grows to that in about a month, as a rough guess')
    speak('de', german)
    expect(sayHonestly(above)).toMatch(
      /^Dieses Stück liegt über dem, was .* \(an der schwersten Stelle 1,4-mal so schwer\)\. .* in einem Monat;/,
    )
  })
})
