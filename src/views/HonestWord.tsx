import { useEffect, useState } from 'react'
import type { PlannedPiece } from '@/app/plans'
import { sayDistance, sayWay } from '@/app/planWords'
import { formatRoute, type Route } from '@/app/route'
import type { HonestWord as Word, Way } from '@/plan/honest'
import { planText } from '@/text/plan'
import { useApp } from './context'

/** How far the piece stands above what is kept, and what leads there; it takes a moment, since all pieces are looked into. */
export const HonestWord = ({ planned }: { readonly planned: PlannedPiece }) => {
  const app = useApp()
  const [word, setWord] = useState<Word>()
  const [progress, setProgress] = useState<() => string>()
  useEffect(() => {
    let isOver = false
    const tell = (done: number, of: number): void => {
      if (!isOver) setProgress(() => () => planText.honest.comparing(done, of))
    }
    app.plans.honestly(planned, tell).then(
      (found) => {
        if (isOver) return
        if (found.ok) setWord(found.value)
        else setProgress(() => () => found.reason)
      },
      (error: unknown) => setProgress(() => () => planText.honest.failed(String(error))),
    )
    return () => {
      isOver = true
    }
  }, [app, planned])
  const ways = word && 'ways' in word ? word.ways : []
  return (
    <section className="plan-word" aria-label={planText.honest.label} data-word={word?.kind}>
      <p className={word ? '' : 'soft'} role="status">
        {word ? sayDistance(word) : progress?.()}
      </p>
      {ways.length > 0 && (
        <>
          <p>{planText.honest.ways}</p>
          <ul>
            {ways.map((way) => (
              <li key={sayWay(way)}>
                <a href={formatRoute(routeTo(way))}>{sayWay(way)}</a>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  )
}

const routeTo = ({ piece, place }: Way): Route => {
  if (!place) return { kind: 'plan', piece }
  const { from, to, hand } = place
  return {
    kind: 'buildUp',
    piece,
    plan: { passage: { from, to, hand }, thoroughness: 'brisk', direction: 'forward' },
  }
}
