import type { StoreApi } from 'zustand/vanilla'
import type { Coach } from '@/coach/coach'
import type { Problem } from '@/coach/reasons'
import type { HandReach } from '@/fingering/spans'
import { drillId } from '@/journal/ids'
import type { Drilling } from './drilling'
import type { Ports } from './ports'
import type { PracticeState } from './practiceState'
import type { Practising } from './practising'
import { findProblem } from './recording'
import type { RemedyAt, Session } from './session'
import type { TakenUp } from './takeUp'

/** A drill that has stopped at a problem, the remedies that are offered, and the way back from one. */
export interface Solving {
  /** The drill stops: what it is and what can be done is shown. */
  readonly open: (problem: Problem) => Promise<void>
  /** Another of the remedies is the one that a key of the instrument starts. */
  readonly chooseNext: () => void
  /** Starts the chosen remedy, or the one of this index. */
  readonly start: (index?: number) => Promise<void>
  /** A remedy is on the desk. */
  readonly isAway: () => boolean
  /** Back to the drill. */
  readonly leave: (solved: boolean) => void
  /** The drill itself is left. */
  readonly forget: () => void
}

interface Desk {
  readonly ports: Pick<Ports, 'newId' | 'now'>
  readonly session: Session
  readonly store: StoreApi<PracticeState | undefined>
  readonly drilling: Drilling
  readonly putOnDesk: (practising: Practising, coach: Coach) => void
  readonly standard: () => 'notes' | 'flow' | 'time'
  /** How far the person's hand reaches now. */
  readonly reach: () => HandReach
}

/** The drill that waits while a remedy is on the desk. */
interface Waiting extends TakenUp {
  readonly at: RemedyAt
  readonly problem: NonNullable<PracticeState['problem']>
}

/** Diagnosis and remedies come when they are wanted first. */
const loadDiagnosing = () => import('./diagnosing')

export const createSolving = (desk: Desk): Solving => {
  const { ports, session, store, drilling } = desk
  let waiting: Waiting | undefined

  const show = (problem: PracticeState['problem']): void =>
    store.setState((state) => state && { ...state, problem }, true)

  const solving: Solving = {
    isAway: () => waiting !== undefined,
    forget: () => {
      waiting = undefined
    },
    open: async (problem) => {
      const { findOut } = await loadDiagnosing()
      const stopped = drilling.standing()
      if (!stopped || waiting) return
      const { practising, coach } = stopped
      const found = findOut(practising, problem, coach, desk.reach())
      // After a reload it is in the record already.
      const id =
        findProblem(session.store.getState().events, practising, problem)?.times === problem.times
          ? findProblem(session.store.getState().events, practising, problem)?.id
          : undefined
      const named = id ?? session.problemNamed(practising, found.diagnosis)
      show({ ...found, problem, id: named, chosen: 0 })
    },
    chooseNext: () => {
      const problem = store.getState()?.problem
      if (!problem || problem.remedies.length === 0) return
      show({ ...problem, chosen: (problem.chosen + 1) % problem.remedies.length })
    },
    start: async (index) => {
      const problem = store.getState()?.problem
      const stopped = drilling.standing()
      const remedy = problem?.remedies[index ?? problem.chosen]
      if (!problem || !stopped || !remedy) return
      const { remedyDrill } = await loadDiagnosing()
      const { practising, coach } = stopped
      const drill = remedyDrill(practising, remedy, coach, drillId(ports.newId()))
      if (!drill || waiting) return
      const at = { practising, problem: problem.id }
      waiting = { ...stopped, at, problem: { ...problem, taken: remedy } }
      void session.remedyBegun(at, remedy.kind, drill.practising.drill)
      void session.drillBegun(drill.practising, {
        streakGoal: drill.coach.streakGoal,
        startTempo: drill.coach.rung,
        standard: desk.standard(),
      })
      desk.putOnDesk(drill.practising, drill.coach)
    },
    leave: (solved) => {
      const away = drilling.standing()
      if (!waiting || !away) return
      const { practising, coach, at, problem } = waiting
      waiting = undefined
      const { endurance } = away.coach
      void session.remedyEnded(at, solved ? 'solved' : 'leftOff')
      desk.putOnDesk(practising, endurance ? { ...coach, endurance } : coach)
      const { taken } = problem
      if (!taken) return
      drilling.tellCoach({
        kind: 'remedied',
        remedy: taken.kind,
        problem: problem.problem,
        solved,
        at: ports.now(),
      })
      if (!solved) show(problem)
    },
  }
  return solving
}
