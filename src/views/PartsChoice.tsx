import { useState } from 'react'
import type { OpenPiece } from '@/app/library'
import { useApp } from './context'
import { plural } from '@/text/plural'
import './pieces.css'

/** Which of the parts of the piece's file are taken, and the choice of others. */
export const PartsChoice = ({ piece }: { readonly piece: OpenPiece }) => {
  const app = useApp()
  const parts = piece.parts ?? []
  const taken = parts.flatMap((part, i) => (part.taken ? [i] : []))
  const [chosen, setChosen] = useState<readonly number[]>(taken)
  const isSame = chosen.length === taken.length && chosen.every((i) => taken.includes(i))
  const toggle = (i: number): void =>
    setChosen(chosen.includes(i) ? chosen.filter((each) => each !== i) : [...chosen, i])
  const nameOf = (i: number): string => parts[i]?.name || `part ${i + 1}`
  return (
    <aside className="page parts-choice" aria-label="Parts of the file">
      <details>
        <summary>
          The file has {plural(parts.length, 'part')}; taken: {taken.map(nameOf).join(', ')}
        </summary>
        <form
          onSubmit={(event) => {
            event.preventDefault()
            void app.takeParts(
              piece,
              chosen.toSorted((a, b) => a - b),
            )
          }}
        >
          <fieldset>
            <legend>Parts to play</legend>
            {parts.map(({ notes }, i) => (
              <label key={i} className="row tight">
                <input
                  type="checkbox"
                  checked={chosen.includes(i)}
                  disabled={notes === 0}
                  onChange={() => toggle(i)}
                />
                {nameOf(i)} <span className="soft">{plural(notes, 'note')}</span>
              </label>
            ))}
          </fieldset>
          <p className="soft">
            Other parts are other music, with a record of their own; that of these stays.
          </p>
          <button type="submit" disabled={chosen.length === 0 || isSame}>
            Take these
          </button>
        </form>
      </details>
    </aside>
  )
}
