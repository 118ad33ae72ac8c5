import { useMemo, useState } from 'react'
import type { Fingers } from '@/music/fingers'
import { fingeringText, tellImpossible } from '@/text/fingering'
import { FingeringProposals } from './FingeringProposals'
import { FingeringVersions, type Listed } from './FingeringVersions'
import { phrase } from './phrase'
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
  const isFull =
    keep &&
    notesIn(score, from, to).every(
      (note) => !handsOf(hand).includes(note.hand) || (note.fingers?.length ?? 0) > 0,
    )
  const { problem: notLooked } = proposing
  const missing =
    problem ?? (notLooked === undefined ? undefined : fingeringText.notLooked(notLooked))
  return (
    <section className="fingerings" aria-labelledby="fingerings">
      <div className="row fingerings-head">
        <h2 id="fingerings">{fingeringText.title}</h2>
        <p className="soft" aria-live="polite">
          {proposing.isLooking ? fingeringText.looking : said}
        </p>
        <label className="check">
          <input
            type="checkbox"
            checked={keep}
            onChange={({ target }) => setKeep(target.checked)}
          />
          {fingeringText.keepDigits}
        </label>
        <button type="button" onClick={propose}>
          {phrase(
            fingeringText.propose(formatBars(first, last), handWords[hand], <kbd key="p">P</kbd>),
          )}
        </button>
      </div>
      {missing !== undefined && <p className="notice">{missing}</p>}
      {carriedFingers && (
        <p role="status" className="notice">
          {fingeringText.carried(carriedFingers.carried, carriedFingers.dropped)}
        </p>
      )}
      <FingeringVersions piece={piece} listed={shown} onSay={setSaid} />
      {(compared[0]?.impossible ?? []).map(({ start, ids, why }) => (
        <p key={ids.join()} className="fingering-impossible" role="note">
          {fingeringText.at(describePlace(score, start), tellImpossible(why))}
        </p>
      ))}
      {proposing.found && (
        <>
          {isFull && <p className="soft">{fingeringText.full}</p>}
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
        {fingeringText.how} {fingeringText.notYours}
      </p>
    </section>
  )
}
