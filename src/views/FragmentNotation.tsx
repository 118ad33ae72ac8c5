import type { Score } from '@/music/music'
import { tick } from '@/music/units'
import { drillText } from '@/text/drill'
import { Notation } from './Notation'

/** The notes of a fragment that is being made; it keeps its place while there are none. */
export const FragmentNotation = ({
  score,
  empty,
}: {
  readonly score: Score | undefined
  readonly empty: string
}) => {
  const hands = new Set(score?.notes.map(({ hand }) => hand))
  const [only] = hands
  return (
    <div className="preview fragment" data-notes={score?.notes.length ?? 0}>
      {score ? (
        <Notation
          caller="fragment"
          stretch={{
            score,
            start: tick(0),
            end: score.end,
            hand: hands.size === 1 && only ? only : 'both',
          }}
          label={drillText.notation.fragment(score.notes.length, score.bars.length)}
        />
      ) : (
        <p className="notation-note soft">{empty}</p>
      )}
    </div>
  )
}
