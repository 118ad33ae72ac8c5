import { useState } from 'react'
import { freeName } from '@/app/fingerings'
import type { Fingers } from '@/music/fingers'
import { nameKey, signatureAt } from '@/music/spelling'
import { fingeringText, tellUnreachable } from '@/text/fingering'
import { useApp } from './context'
import { describeDifferences, writeDigits } from './fingeringWords'
import {
  handsOf,
  notesIn,
  usePieceFingerings,
  type Fingering,
  type Proposal,
  type Proposals,
} from './useFingering'
import { describePlace, handWords } from './words'

/** What the model proposes for the passage: looked at on the music, taken over, or left. */
export const FingeringProposals = (
  props: Fingering & {
    readonly found: Proposals
    /** Shown over the music of the passage. */
    readonly onTry: (fingers: Fingers | undefined) => void
    readonly onTaken: (words: string) => void
  },
) => {
  const { piece, hand, from, to, found, onTry, onTaken } = props
  const app = useApp()
  const words = fingeringText.proposals
  const { versions, chosen } = usePieceFingerings(piece)
  const [tried, setTried] = useState<Proposal>()
  const { score, fileFingers } = piece
  const notes = notesIn(score, from, to)
  const into = versions.find(({ id }) => id === chosen)
  const asFingers = ({ fingers }: Proposal): Fingers =>
    new Map([...fingers].map(([id, finger]) => [id, [finger]]))
  const take = (proposal: Proposal, isNew: boolean): void => {
    onTry(undefined)
    setTried(undefined)
    if (into && !isNew) {
      void app.fingerings.write(piece, asFingers(proposal))
      onTaken(words.taken(into.name))
      return
    }
    const fingers = new Map([...(into?.fingers ?? fileFingers), ...asFingers(proposal)])
    const name = freeName(versions, fingeringText.names.proposed)
    void app.fingerings.begin(score.id, { name, origin: 'proposal', fingers })
    onTaken(words.takenAsNew(name))
  }
  return (
    <section aria-labelledby="proposals">
      <h3 id="proposals">{words.title}</h3>
      <ol className="fingering-list">
        {found.proposals.map((proposal, i) => (
          <li key={i} className="fingering">
            <div className="fingering-digits">
              {handsOf(hand).map((each) => (
                <p key={each}>
                  {hand === 'both' && <span className="soft">{handWords[each]} </span>}
                  {writeDigits(notes, each, proposal.fingers)}
                </p>
              ))}
            </div>
            <p className="fingering-difference">
              {i === 0
                ? words.first
                : fingeringText.besideFirst(describeDifferences(proposal.differences))}
            </p>
            <span className="row tight fingering-buttons">
              <button
                type="button"
                className="plain"
                aria-pressed={tried === proposal}
                aria-label={words.seeNamed(i + 1)}
                onClick={() => {
                  const next = tried === proposal ? undefined : proposal
                  setTried(next)
                  onTry(next && asFingers(next))
                }}
              >
                {words.see}
              </button>
              <button
                type="button"
                aria-label={words.takeNamed(i + 1)}
                onClick={() => take(proposal, false)}
              >
                {words.take}
              </button>
              {into && (
                <button
                  type="button"
                  className="plain"
                  aria-label={words.asNewNamed(i + 1)}
                  onClick={() => take(proposal, true)}
                >
                  {words.asNew}
                </button>
              )}
            </span>
          </li>
        ))}
        {found.proposals.length === 0 && <li className="soft">{words.none}</li>}
        {found.unreachable.map(({ start, ids, why }) => (
          <li key={ids.join()} className="soft">
            {fingeringText.at(
              describePlace(score, start),
              tellUnreachable(why, (key) => nameKey(key, signatureAt(score.keys, start))),
            )}
          </li>
        ))}
      </ol>
    </section>
  )
}
