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

const words: Readonly<Record<string, 'raise' | 'lower' | 'goOn' | 'undo'>> = {
  '+': 'raise',
  '-': 'lower',
  g: 'goOn',
  u: 'undo',
}

/** Two repetitions lie so far apart that a pause was kept. */
export const apart = 10_000

export interface Drill {
  readonly coach: Coach
  readonly commands: readonly Command[]
}

/**
 * Drills by letters: c clean, f flawed, b broken off, + raise, - lower, g go on, u undo; spaces are nothing.
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
      : stepCoach(coach, { kind: words[letter] ?? 'goOn', at })
    coach = next
    all.push(...commands)
  }
  return { coach, commands: all }
}

/** Commands in short: 'streakMet, tempo 76'. */
export const inShort = (commands: readonly Command[]): string => commands.map(shorten).join(', ')

const shorten = (command: Command): string => {
  if (command.kind === 'tempo') return `tempo ${command.tempo}`
  if (command.kind === 'overruled') return `overruled ${command.what}`
  if (command.kind === 'trialEnded') return `trialEnded ${command.rung ?? 'none'}`
  if (command.kind === 'problemOutcome') return command.helped ? 'helped' : 'did not help'
  return command.kind
}

export const sentences = (commands: readonly Command[]): readonly string[] =>
  commands.flatMap((c): Reason[] => ('reason' in c ? [c.reason] : [])).map((r) => explain(r))
