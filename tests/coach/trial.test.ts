import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { buildLadder, startRung, type Ladder } from '@/coach/ladder'
import { limits } from '@/coach/limits'
import { beginTrial, stepTrial, trialRung, type Trial, type TrialStep } from '@/coach/trial'
import { verdicts, type Verdict } from '@/judge/repetition'
import { tempo } from '@/music/units'
import { drill, inShort, sentences, settings } from './drill'

const begun = (goal: number, ladder: Ladder = { kind: 'classic' }): Trial => {
  const rungs = buildLadder(ladder, tempo(goal))
  return beginTrial(rungs, startRung(rungs))
}

const letters: Readonly<Record<string, Verdict>> = { c: 'clean', f: 'flawed', b: 'brokenOff' }

/** The tempi that are tried, and how it ends: '66 72 88, starts at 72'. */
const tried = (sequence: string, goal = 120): string => {
  let trial = begun(goal)
  const tempi = [trialRung(trial)]
  for (const letter of sequence.replaceAll(' ', '')) {
    const step = stepTrial(trial, letters[letter] ?? 'clean')
    if (step.kind === 'found') return `${tempi.join(' ')}, starts at ${step.tempo}`
    if (step.kind === 'tooBig') return `${tempi.join(' ')}, too big`
    trial = step.trial
    if (step.reason) tempi.push(trialRung(trial))
  }
  return tempi.join(' ')
}

/** Rungs to 120: 60 63 66 69 72 76 80 84 88 92 96 100 104 108 112 116 120; 55 % of it is 66. */
describe('the trial', () => {
  test.each([
    ['it begins near 55 per cent of the goal', '', '66'],
    ['three of three clean: up, each time twice as far', 'ccc ccc ccc', '66 72 88 120'],
    ['all the way to the goal', 'ccc ccc ccc ccc', '66 72 88 120, starts at 120'],
    ['a flaw: half-way down', 'ccc ccc f', '66 72 88 80'],
    ['two clean are not three', 'ccc ccc ccf', '66 72 88 80'],
    ['down, and up again from what went', 'ccc ccc f ccc', '66 72 88 80 84'],
    ['it ends where nothing lies between', 'ccc ccc f ccc f', '66 72 88 80 84, starts at 80'],
    ['flawed at once: the slowest, then between', 'f ccc', '66 60 63'],
    ['the slowest is found', 'f ccc f', '66 60 63, starts at 60'],
    ['one that breaks off is let pass', 'cbcc', '66 72'],
    ['the second does not', 'cbb', '66 60'],
    ['the slowest has a second chance', 'f f ccc', '66 60 63'],
    ['the group is too big', 'f f f', '66 60, too big'],
  ])('%s', (_, sequence, tempi) => {
    expect(tried(sequence)).toBe(tempi)
  })

  test('a ladder of one rung is tried there', () => {
    expect(tried('ccc', 2)).toBe('2, starts at 2')
    expect(tried('f f', 2)).toBe('2, too big')
  })
})

/** Every state that any outcome can lead to, and every end; the first argument of `see` tells how it came. */
const explore = (
  trial: Trial,
  see: (step: TrialStep, before: Trial) => void,
  known: Set<string> = new Set(),
): void => {
  const name = JSON.stringify({ ...trial, rungs: 0 })
  if (known.has(name)) return
  known.add(name)
  for (const verdict of verdicts) {
    const step = stepTrial(trial, verdict)
    see(step, trial)
    if (step.kind === 'goesOn') explore(step.trial, see, known)
  }
}

const ladders: readonly (readonly [string, Trial])[] = [
  ['to 2', begun(2)],
  ['to 5', begun(5)],
  ['to 40', begun(40)],
  ['to 66', begun(66)],
  ['to 120', begun(120)],
  ['to 208', begun(208)],
  ['to 400', begun(400)],
  ['to 160 by three per cent', begun(160, { kind: 'percent', percent: 3 })],
]

describe.each(ladders)('for all outcomes on the ladder %s', (_, trial) => {
  test(`it ends within ${limits.trial.repetitions} repetitions`, () => {
    let most = 0
    explore(trial, (step, before) => {
      most = Math.max(most, before.repetitions + 1)
      if (before.repetitions + 1 >= limits.trial.repetitions) expect(step.kind).not.toBe('goesOn')
    })
    expect(most).toBeLessThanOrEqual(limits.trial.repetitions)
  })
})

const anyVerdicts = fc.array(fc.constantFrom<Verdict>('clean', 'clean', 'clean', ...verdicts), {
  minLength: limits.trial.repetitions,
  maxLength: limits.trial.repetitions,
})

/** Plays the verdicts, and counts on the side, by rung, the clean in the last try there. */
const play = (trial: Trial, sequence: readonly Verdict[]) => {
  const proved = new Set<number>()
  let here = 0
  let now = trial
  for (const verdict of sequence) {
    here = verdict === 'clean' ? here + 1 : verdict === 'flawed' ? 0 : here
    if (here === 3) proved.add(trialRung(now))
    const step = stepTrial(now, verdict)
    if (step.kind !== 'goesOn') return { step, proved }
    if (step.trial.at !== now.at || step.trial.lastChance !== now.lastChance) here = 0
    now = step.trial
  }
  return { step: undefined, proved }
}

test('it starts the drill at the highest rung that had three of three clean', () => {
  fc.assert(
    fc.property(anyVerdicts, fc.constantFrom(...ladders), (sequence, [, trial]) => {
      const { step, proved } = play(trial, sequence)
      const highest = Math.max(...proved)
      if (step?.kind === 'found') expect(step.tempo).toBe(highest)
      else expect([step?.kind, proved.size]).toEqual(['tooBig', 0])
    }),
    { numRuns: 500 },
  )
})

describe('in the drill', () => {
  const withTrial = { goalTempo: tempo(120), ladder: settings.ladder, trial: true } as const

  test('the tempo goes with the trial, and the drill starts where it ends', () => {
    const { coach, commands } = drill('ccc ccc f ccc f', withTrial)
    expect(inShort(commands)).toBe(
      'tempo 72, tempo 88, tempo 80, tempo 84, trialEnded 80, tempo 80',
    )
    expect([coach.rung, coach.streak, coach.trial, coach.repetitions]).toEqual([
      80,
      0,
      undefined,
      11,
    ])
  })

  test('it says what it does in one sentence each', () => {
    expect(sentences(drill('ccc f', withTrial).commands)).toEqual([
      'Three of three clean at 66: now 72.',
      'Not yet at 72: now 69.',
    ])
    expect(sentences(drill('ccc f f', withTrial).commands).at(-1)).toBe(
      'Three of three clean at 66: the drill starts here.',
    )
  })

  test('a group too big stops the drill; to go on all the same is recorded', () => {
    const { coach, commands } = drill('fff', withTrial)
    expect(inShort(commands)).toBe('tempo 60, trialEnded none, smallerGroup')
    expect(sentences(commands).at(-1)).toBe(
      'No three of three clean at 60, the slowest tempo here: a smaller group will go better.',
    )
    expect([coach.rung, coach.paused?.reason.kind]).toEqual([60, 'trialTooBig'])
    expect(inShort(drill('fffg', withTrial).commands)).toMatch(/overruled smallerGroup$/)
  })

  test('in the trial nothing counts toward a streak, and no pause is asked for', () => {
    expect(drill('cc', withTrial).coach.streak).toBe(0)
    expect(inShort(drill('ff', withTrial).commands)).toBe('tempo 60')
  })

  test('taking it back ends it: at what it has found, else where the drill starts without one', () => {
    expect(inShort(drill('cccf u', withTrial).commands)).toBe(
      'tempo 72, tempo 69, overruled trial, trialEnded 66, tempo 66',
    )
    expect(inShort(drill('f u', withTrial).commands)).toBe(
      'tempo 60, overruled trial, trialEnded 66, tempo 66',
    )
    expect(drill('f u', withTrial).coach.trial).toBeUndefined()
  })

  test("the person's own choice of a rung ends it too", () => {
    const { coach, commands } = drill('ccc+', withTrial)
    expect(inShort(commands)).toBe('tempo 72, overruled raise, tempo 76')
    expect([coach.trial, coach.rung]).toEqual([undefined, 76])
  })
})
