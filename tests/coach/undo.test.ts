import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { stepCoach, type Coach } from '@/coach/coach'
import { ms, tempo } from '@/music/units'
import { drill, inShort, sentences, settings } from './drill'

const slow = { ...settings, startTempo: tempo(60) }

describe('taking back what the coach decided', () => {
  test.each([
    ['the tempo up', 'ccccc u', 72, 'streakMet, tempo 76, overruled tempoUp, tempo 72'],
    ['the tempo down', 'fcfcf u', 72, 'tempo 69, overruled tempoDown, tempo 72'],
    ['a pause', 'ff u', 72, 'pause, overruled pause'],
    [
      'one after another, the last first',
      'ccccc fcfcf u u',
      72,
      'streakMet, tempo 76, tempo 72, overruled tempoDown, tempo 76, overruled tempoUp, tempo 72',
    ],
    [
      'later still, after playing on',
      'ccccc c u',
      72,
      'streakMet, tempo 76, overruled tempoUp, tempo 72',
    ],
    ['a pause that playing has ended is no more to be undone', 'ff c u', 72, 'pause'],
    ['nothing decided, nothing undone', 'cc u', 72, ''],
    ['the own choice is not a decision of the coach', '+ u', 76, 'overruled raise, tempo 76'],
    [
      'what came before the own choice is settled by it',
      'ccccc + u',
      80,
      'streakMet, tempo 76, overruled raise, tempo 80',
    ],
  ])('%s: %s', (_, sequence, rung, commands) => {
    const { coach, commands: given } = drill(sequence)
    expect([coach.rung, inShort(given)]).toEqual([rung, commands])
  })

  test('a smaller group that was asked for', () => {
    const { coach, commands } = drill('fff u', slow)
    expect(inShort(commands)).toBe('pause, smallerGroup, overruled smallerGroup')
    expect(coach.paused).toBeUndefined()
  })

  test('the same evidence does not decide a second time: streak and window begin anew', () => {
    const { coach } = drill('fcfcf u')
    expect([coach.streak, coach.window]).toEqual([0, []])
    expect(inShort(drill('fcfcf u f').commands)).not.toMatch(/tempo 69.*tempo 69/)
    expect(drill('ccccc u cccc').coach.rung).toBe(72)
    expect(drill('ccccc u ccccc').coach.rung).toBe(76)
  })

  test('it is told as the person’s choice', () => {
    expect(sentences(drill('ccccc u').commands).at(-1)).toBe('Your choice: down from 76 to 72.')
  })
})

const letters = fc.string({
  unit: fc.constantFrom('c', 'c', 'c', 'f', 'b', 'g', 'u', '+', '-'),
  maxLength: 80,
})

const undoAll = (coach: Coach): readonly [Coach, number] => {
  let now = coach
  for (let n = 0; n < 100; n++) {
    const [next, commands] = stepCoach(now, { kind: 'undo', at: ms(10_000_000) })
    if (commands.length === 0) return [now, n]
    if (next.paused === now.paused && next.trial === now.trial && next.rung === now.rung)
      throw new Error('an undo that changes nothing says so')
    now = next
  }
  throw new Error('undoing does not end')
}

test('with every decision undone the drill stands at the last rung that the person chose', () => {
  fc.assert(
    fc.property(letters, (sequence) => {
      const lastChoice = Math.max(sequence.lastIndexOf('+'), sequence.lastIndexOf('-'))
      const chosen = drill(sequence.slice(0, lastChoice + 1)).coach
      const [before] = undoAll(chosen)
      // An undo among the letters may have reached the same decisions.
      const [after, undone] = undoAll(drill(sequence).coach)
      expect(after.decisions).toEqual([])
      expect(after.paused).toBeUndefined()
      expect(after.rung).toBe(before.rung)
      expect(undone).toBeLessThanOrEqual(sequence.length + 1)
    }),
  )
})
