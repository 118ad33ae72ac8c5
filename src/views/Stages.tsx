import { routeOf, type BuildUpStanding } from '@/app/buildUps'
import { formatRoute } from '@/app/route'
import type { Exercise } from '@/exercises/buildUp'
import type { Score } from '@/music/music'
import { buildUpText, nameExercise } from '@/text/buildUp'
import { PassageStrip } from './PassageStrip'
import { describePlace, formWords, handWords } from './words'

/** The exercises of a build-up, stage by stage: where each stands in the passage, and what it is for. */
export const Stages = ({
  score,
  standing,
  onStart,
}: {
  readonly score: Score
  readonly standing: BuildUpStanding
  readonly onStart: (exercise: Exercise) => void
}) => {
  const { exercises } = standing
  const stages = [...new Set(exercises.map(({ stage }) => stage))]
  return (
    <ol className="stages">
      {stages.map((stage) => {
        const all = exercises.filter((each) => each.stage === stage)
        // What all of a stage have in common is told in its heading.
        const kind = all.length > 1 ? commonOf(all.map(nameExercise)) : undefined
        const why = commonOf(all.map((each) => each.why))
        return (
          <li key={stage}>
            <h2>
              {buildUpText.stage(stage)}{' '}
              <span className="soft">
                {[kind, why && buildUpText.purposes[why]].filter(Boolean).join(': ')}
              </span>
            </h2>
            <ol className="exercises">
              {all.map((exercise) => (
                <Row
                  key={exercise.chunk.id}
                  {...{ standing, exercise }}
                  where={describePlace(score, exercise.from)}
                  isKindTold={kind !== undefined}
                  isReasonTold={why !== undefined}
                  onStart={() => onStart(exercise)}
                />
              ))}
            </ol>
          </li>
        )
      })}
    </ol>
  )
}

/** What all are; `undefined` where they are not alike. */
const commonOf = <T,>(all: readonly T[]): T | undefined => {
  const [first, ...others] = new Set(all)
  return others.length === 0 ? first : undefined
}

const Row = ({
  standing: { plan, progress, passage },
  exercise,
  where,
  isKindTold,
  isReasonTold,
  onStart,
}: {
  readonly standing: BuildUpStanding
  readonly exercise: Exercise
  readonly where: string
  readonly isKindTold: boolean
  readonly isReasonTold: boolean
  readonly onStart: () => void
}) => {
  const { next, settled } = progress
  const state = exercise === next ? 'next' : settled.includes(exercise) ? 'done' : 'open'
  const lastOnset = passage.start + (passage.onsets.at(-1)?.start ?? 0)
  return (
    <li data-state={state}>
      <a
        href={formatRoute(routeOf(passage.piece, plan, exercise))}
        aria-current={state === 'next' ? 'step' : undefined}
        onClick={(event) => {
          event.preventDefault()
          onStart()
        }}
      >
        <svg className="exercise-state" viewBox="0 0 20 20" aria-hidden="true">
          {state === 'done' ? (
            <path d="M3 11l5 6L17 3" />
          ) : (
            <circle cx="10" cy="10" r={state === 'next' ? 6.5 : 2.5} />
          )}
        </svg>
        <span className="unseen">{buildUpText.states[state]} </span>
        <span>
          <span className={isKindTold ? 'unseen' : undefined}>{nameExercise(exercise)}, </span>
          {where}
          {plan.passage.hand === 'both' && `, ${handWords[exercise.hand]}`}
          {exercise.form === 'asWritten' ? '' : `, ${formWords[exercise.form]}`}
        </span>
      </a>
      <span className="exercise-part">
        <PassageStrip
          passage={{ from: passage.start, to: lastOnset }}
          part={{ from: exercise.from, to: exercise.to }}
        />
        {!isReasonTold && <span className="soft">{buildUpText.purposes[exercise.why]}</span>}
      </span>
    </li>
  )
}
