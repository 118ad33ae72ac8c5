import { describe, expect, test } from 'vitest'
import { beginCoach, coachRepetition, stepCoach, type Coach } from '@/coach/coach'
import type { Command } from '@/coach/messages'
import type { CoachFlaw } from '@/coach/problems'
import { parseKey } from '@/music/pitch'
import { key, ms, type Key } from '@/music/units'
import { drill, inShort, sentences, settings } from './drill'

const pitch = (name: string): Key => parseKey(name) ?? key(0)
const wrong = (onset: number, written: string, played: string): CoachFlaw => ({
  kind: 'wrong',
  onset,
  written: pitch(written),
  played: pitch(played),
})

/** One repetition every ten seconds; nothing is a clean one. */
const repeat = (tries: readonly (CoachFlaw | undefined)[]): readonly Command[] => {
  let coach = beginCoach(settings)
  return tries.flatMap((flaw, i) => {
    const at = ms((i + 1) * 10_000)
    const [next, commands] = stepCoach(coach, {
      kind: 'repetition',
      verdict: flaw ? 'flawed' : 'clean',
      flaws: flaw ? [flaw] : [],
      start: ms(at - 1_000),
      at,
    })
    coach = next
    return commands
  })
}

describe('the same flaw at the same place', () => {
  const slip = wrong(2, 'D4', 'D#4')

  test('twice is a problem, with place, written and played key', () => {
    const problem = repeat([slip, undefined, slip]).find((c) => c.kind === 'problem')
    expect(problem).toMatchObject({ flaw: 'wrong', place: 2, written: 62, played: 63, times: 2 })
  })

  test('the sentence names what, where and how often', () => {
    expect(sentences(repeat([slip, undefined, slip]))).toEqual([
      'D#4 in place of D4 at onset 3, twice: solve it before repeating it.',
    ])
  })

  test.each<[string, readonly (CoachFlaw | undefined)[], string]>([
    ['another place', [slip, undefined, wrong(1, 'D4', 'D#4')], ''],
    ['another written key of the chord', [slip, undefined, wrong(2, 'F4', 'D#4')], ''],
    ['another kind', [slip, undefined, { ...slip, kind: 'missing' }], ''],
    [
      'another played key is still the same flaw',
      [slip, undefined, wrong(2, 'D4', 'C4')],
      'problem',
    ],
    [
      'once more after it was named',
      [slip, undefined, slip, undefined, undefined, slip],
      'problem',
    ],
    [
      'ten repetitions later',
      [slip, ...Array<undefined>(10), slip],
      'streakMet, tempo 76, streakMet, tempo 80',
    ],
  ])('%s', (_, tries, commands) => {
    expect(inShort(repeat(tries))).toBe(commands)
  })

  test('twice more after it was named is named again, with all the times', () => {
    const clean = undefined
    const named = repeat([slip, clean, slip, clean, clean, slip, clean, clean, slip])
    expect(named.flatMap((c) => (c.kind === 'problem' ? [c.times] : []))).toEqual([2, 4])
  })
})

describe('a pause', () => {
  test('ends by going on, or by playing after a look; neither is an overrule', () => {
    expect(drill('ffgc').coach.paused).toBeUndefined()
    expect(inShort(drill('ffgc').commands)).toBe('pause')
    expect(inShort(drill('ffc').commands)).toBe('pause')
  })

  test('that is played through is recorded as overruled', () => {
    expect(inShort(drill('ffc', settings, 2_000).commands)).toBe('pause, overruled pause')
  })

  test('going on in spite of a problem is recorded', () => {
    let coach = beginCoach(settings)
    const commands = [1, 2].flatMap((n) => {
      const event = coachEvent(n, wrong(0, 'C4', 'B3'))
      const [next, given] = stepCoach(coach, event)
      coach = next
      return given
    })
    const [after, given] = stepCoach(coach, { kind: 'goOn', at: ms(25_000) })
    expect(inShort([...commands, ...given])).toBe('problem, overruled problem')
    expect(after.paused).toBeUndefined()
  })
})

describe('time', () => {
  /** Clean repetitions of ten seconds, so many minutes long. */
  const practise = (minutes: number, from: Coach = beginCoach(settings), begin = 0) => {
    let coach = from
    const commands: Command[] = []
    for (let at = begin + 10_000; at <= begin + minutes * 60_000; at += 10_000) {
      const [next, given] = stepCoach(coach, coachEvent(at / 10_000))
      coach = next
      commands.push(...given.filter((c) => c.kind === 'rest' || c.kind === 'elsewhere'))
    }
    return { coach, commands }
  }

  test('another place is offered after seven minutes, and after seven more', () => {
    expect(inShort(practise(6.8).commands)).toBe('')
    expect(inShort(practise(7.2).commands)).toBe('elsewhere')
    expect(inShort(practise(14.4).commands)).toBe('elsewhere, elsewhere')
  })

  test('another place is offered after sixty repetitions', () => {
    const { commands } = drill('c'.repeat(60), settings, 3_000)
    expect(sentences(commands).at(-1)).toBe(
      'Sixty repetitions in three minutes at this place: another place now, this one again later.',
    )
  })

  test('a rest is asked for after 25 minutes and a strong one at 50', () => {
    const rests = practise(60).commands.filter((c) => c.kind === 'rest')
    expect(rests.map((c) => c.strong)).toEqual([false, true])
    expect(sentences(rests)[0]).toBe('25 minutes of practice: five minutes of rest now.')
  })

  test('five minutes away are a rest', () => {
    const first = practise(20)
    const second = practise(20, first.coach, 25 * 60_000)
    expect([...first.commands, ...second.commands].some((c) => c.kind === 'rest')).toBe(false)
  })

  test('the minutes go on in the next drill, those of the place begin anew', () => {
    const first = practise(20)
    const second = practise(6, beginCoach(settings, first.coach.endurance), 20 * 60_000)
    expect(inShort(second.commands)).toBe('rest')
  })
})

test('leaving a chunk that is not secure is recorded', () => {
  const [, commands] = stepCoach(drill('cc').coach, { kind: 'skip', at: ms(30_000) })
  expect(inShort(commands)).toBe('overruled skip')
})

test('a forgiven flaw does not reach the coach', () => {
  const event = coachRepetition(
    {
      number: 0,
      start: ms(0),
      lastOnset: ms(900),
      verdict: 'clean',
      flaws: [{ kind: 'extra', onset: 1, forgiven: true }],
      marks: [],
      figures: {},
    },
    ms(1_000),
  )
  expect(event).toEqual({ kind: 'repetition', verdict: 'clean', flaws: [], start: 0, at: 1_000 })
})

function coachEvent(n: number, flaw?: CoachFlaw) {
  return {
    kind: 'repetition',
    verdict: flaw ? 'flawed' : 'clean',
    flaws: flaw ? [flaw] : [],
    start: ms(n * 10_000 - 9_000),
    at: ms(n * 10_000),
  } as const
}
