import { useMemo, useState } from 'react'
import type { Fingers } from '@/music/fingers'
import { FingeringProposals } from './FingeringProposals'
import { FingeringVersions, type Listed } from './FingeringVersions'
import { describeCarriedFingers, howToWrite } from './fingeringWords'
import { useKeysByName } from './pieceKeys'
import {
  notesIn,
  handsOf,
  useCompared,
  usePieceFingerings,
  useProposing,
  type Fingering as Props,
} from './useFingering'
import { describePlace, formatBars, handWords } from './words'
import './fingering.css'

/** The person's fingering of the piece: versions, what speaks for each, and proposals for the chosen bars. */
export const Fingering = (
  props: Props & { readonly onTry: (fingers: Fingers | undefined) => void },
) => {
  const { piece, hand, from, to } = props
  const { score, fileFingers, carriedFingers } = piece
  const { versions, chosen, problem } = usePieceFingerings(piece)
  const [said, setSaid] = useState('')
  const [keep, setKeep] = useState(true)
  const proposing = useProposing(props)
  const listed = useMemo(
    () => [
      ...(fileFingers.size > 0
        ? [{ id: undefined, version: undefined, fingers: fileFingers }]
        : []),
      ...versions.map((version) => ({ id: version.id, version, fingers: version.fingers })),
    ],
    [versions, fileFingers],
  )
  // The chosen one first: the others are said to differ from it.
  const order = useMemo(
    () => listed.toSorted((a, b) => Number(b.id === chosen) - Number(a.id === chosen)),
    [listed, chosen],
  )
  const compared = useCompared(
    props,
    useMemo(() => order.map(({ fingers }) => fingers), [order]),
  )
  const shown = listed.map((each): Listed => ({
    ...each,
    compared: order.length > 1 ? compared[order.indexOf(each)] : undefined,
  }))
  const [first, last] = [score.bars[from], score.bars[to]]
  const propose = (): void => {
    setSaid('')
    props.onTry(undefined)
    void proposing.propose(keep)
  }
  useKeysByName({ p: propose })
  if (!first || !last) return null
  const where = `${formatBars(first, last)}, ${handWords[hand]}`
  const isFull =
    keep &&
    notesIn(score, from, to).every(
      (note) => !handsOf(hand).includes(note.hand) || (note.fingers?.length ?? 0) > 0,
    )
  const missing = problem ?? proposing.problem
  return (
    <section className="fingerings" aria-labelledby="fingerings">
      <div className="row fingerings-head">
        <h2 id="fingerings">Fingering</h2>
        <p className="soft" aria-live="polite">
          {proposing.isLooking ? 'Looking for one …' : said}
        </p>
        <label className="check">
          <input
            type="checkbox"
            checked={keep}
            onChange={({ target }) => setKeep(target.checked)}
          />
          Keep the digits that stand
        </label>
        <button type="button" onClick={propose}>
          Propose one for {where} <kbd>P</kbd>
        </button>
      </div>
      {missing !== undefined && <p className="notice">{missing}</p>}
      {carriedFingers && (
        <p role="status" className="notice">
          {describeCarriedFingers(carriedFingers)}
        </p>
      )}
      <FingeringVersions piece={piece} listed={shown} onSay={setSaid} />
      {(compared[0]?.impossible ?? []).map(({ start, words }) => (
        <p key={`${start} ${words}`} className="fingering-impossible" role="note">
          In {describePlace(score, start)}: {words}.
        </p>
      ))}
      {proposing.found && (
        <>
          {isFull && (
            <p className="soft">
              Every note has its digit here: without “Keep the digits that stand” others are looked
              for.
            </p>
          )}
          <FingeringProposals
            {...props}
            found={proposing.found}
            onTaken={(words) => {
              setSaid(words)
              proposing.close()
            }}
          />
        </>
      )}
      <p className="soft fingerings-how">
        {howToWrite} A proposal comes from a model of the hand, never from yours.
      </p>
    </section>
  )
}
