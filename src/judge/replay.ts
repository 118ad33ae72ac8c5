import type { Chunk } from '@/music/chunk'
import type { Take } from '@/music/keyEvent'
import { beginJudge, closingTime, stepJudge, type Finding, type JudgeSettings } from './judge'
import type { Repetition } from './repetition'

/**
 * Judges a stored take: a fold of the same step as live, and silence at the end.
 *
 * `replayTake(chunk, settings, take).repetitions` are the repetitions in the order of their ends.
 */
export const replayTake = (
  chunk: Chunk,
  settings: JudgeSettings,
  take: Take,
): { readonly repetitions: readonly Repetition[]; readonly findings: readonly Finding[] } => {
  const findings: Finding[] = []
  let judge = beginJudge(chunk, settings)
  const feed = (event: Parameters<typeof stepJudge>[1]): void => {
    const [next, found] = stepJudge(judge, event)
    judge = next
    findings.push(...found)
  }
  for (const event of take.events) feed(event)
  feed({ kind: 'clock', at: closingTime(judge) })
  const repetitions = findings.flatMap((f) => (f.kind === 'ended' ? [f.repetition] : []))
  return { repetitions, findings }
}
