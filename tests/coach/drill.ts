import { beginCoach, stepCoach, type Coach, type CoachSettings } from '@/coach/coach'
import type { Command } from '@/coach/messages'
import { explain, type Reason } from '@/coach/reasons'
import type { Verdict } from '@/judge/repetition'
import { ms, tempo } from '@/music/units'

/** 72 is the rung, 120 the goal, five the streak goal. */
export const settings: CoachSettings = {
  goalTempo: tempo(120),
  startTempo: tempo(72),
  ladder: { kind: 'classic' },
}

const letters: Readonly<Record<string, Verdict>> = { c: 'clean', f: 'flawed', b: 'brokenOff' }

/** Two repetitions lie so far apart that a pause was kept. */
export const apart = 10_000

export interface Drill {
  readonly coach: Coach
  readonly commands: readonly Command[]
}

/**
 * Drills by letters: c clean, f flawed, b broken off, + raise, - lower, g go on; spaces are nothing.
 * Each flaw is at another place, so that no problem is found.
 */
export const drill = (sequence: string, with_: CoachSettings = settings, gap = apart): Drill => {
  let coach = beginCoach(with_)
  const all: Command[] = []
  for (const [i, letter] of [...sequence.replaceAll(' ', '')].entries()) {
    const at = ms((i + 1) * gap)
    const verdict = letters[letter]
    const [next, commands] = verdict
      ? stepCoach(coach, {
          kind: 'repetition',
          verdict,
          flaws: verdict === 'flawed' ? [{ kind: 'wrong', onset: i }] : [],
          start: ms(at - 1_000),
          at,
        })
      : stepCoach(coach, { kind: letter === '+' ? 'raise' : letter === '-' ? 'lower' : 'goOn', at })
    coach = next
    all.push(...commands)
  }
  return { coach, commands: all }
}

/** Commands in short: 'streakMet, tempo 76'. */
export const inShort = (commands: readonly Command[]): string =>
  commands
    .map((c) =>
      c.kind === 'tempo'
        ? `tempo ${c.tempo}`
        : c.kind === 'overruled'
          ? `overruled ${c.what}`
          : c.kind,
    )
    .join(', ')

export const sentences = (commands: readonly Command[]): readonly string[] =>
  commands.flatMap((c): Reason[] => ('reason' in c ? [c.reason] : [])).map((r) => explain(r))
