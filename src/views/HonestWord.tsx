import { useEffect, useState } from 'react'
import type { Honestly, PlannedPiece } from '@/app/plans'
import { formatRoute } from '@/app/route'
import { useApp } from './context'

/** How far the piece stands above what is kept, and what leads there; it takes a moment, since all pieces are looked into. */
export const HonestWord = ({ planned }: { readonly planned: PlannedPiece }) => {
  const app = useApp()
  const [word, setWord] = useState<Honestly>()
  const [progress, setProgress] = useState('')
  useEffect(() => {
    let isOver = false
    const tell = (done: number, of: number): void => {
      if (!isOver) setProgress(`Comparing with your pieces: ${done} of ${of}`)
    }
    app.plans.honestly(planned, tell).then(
      (found) => {
        if (isOver) return
        if (found.ok) setWord(found.value)
        else setProgress(found.reason)
      },
      (error: unknown) => setProgress(`Your pieces could not be compared: ${String(error)}`),
    )
    return () => {
      isOver = true
    }
  }, [app, planned])
  return (
    <section className="plan-word" aria-label="Against your record" data-word={word?.kind}>
      <p className={word ? '' : 'soft'} role="status">
        {word ? word.sentence : progress}
      </p>
      {word && word.ways.length > 0 && (
        <>
          <p>On the way there:</p>
          <ul>
            {word.ways.map(({ piece, title, place }) => (
              <li key={title}>
                <a
                  href={formatRoute(
                    place
                      ? {
                          kind: 'buildUp',
                          piece,
                          plan: {
                            passage: { from: place.from, to: place.to, hand: place.hand },
                            thoroughness: 'brisk',
                            direction: 'forward',
                          },
                        }
                      : { kind: 'plan', piece },
                  )}
                >
                  {title}
                </a>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  )
}
