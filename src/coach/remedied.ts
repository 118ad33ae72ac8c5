import { limits } from './limits'
import type { Command } from './messages'
import { isSameFlaw, type CoachFlaw } from './problems'
import type { Problem } from './reasons'
import type { RemedyKind } from './remedyKinds'

/** A solved remedy, until it is known whether it helped. */
export interface RemedyWatch {
  readonly remedy: RemedyKind
  readonly problem: Problem
  /** Repetitions to the end without the flaw, since the drill went on. */
  readonly without: number
}

/**
 * One more repetition of the drill: a remedy whose flaw comes again did not help; one whose flaw
 * stays away in ten repetitions did. A repetition that was broken off may not have come so far.
 */
export const watchRemedies = (
  watches: readonly RemedyWatch[],
  flaws: readonly CoachFlaw[],
  toTheEnd: boolean,
): readonly [readonly RemedyWatch[], readonly Command[]] => {
  const kept: RemedyWatch[] = []
  const commands: Command[] = []
  for (const watch of watches) {
    const again = flaws.some((flaw) => isSameFlaw(flaw, flawOf(watch.problem)))
    const without = watch.without + (toTheEnd ? 1 : 0)
    if (again) commands.push(helped(watch, false, without))
    else if (without >= limits.remedy.watched) commands.push(helped(watch, true, without))
    else kept.push({ ...watch, without })
  }
  return [kept, commands]
}

const flawOf = ({ flaw, place, written }: Problem): CoachFlaw => ({
  kind: flaw,
  onset: place,
  ...(written === undefined ? {} : { written }),
})

const helped = ({ remedy, problem }: RemedyWatch, help: boolean, repetitions: number): Command => ({
  kind: 'problemOutcome',
  remedy,
  problem,
  helped: help,
  repetitions,
})
