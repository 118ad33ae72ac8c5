import { useState } from 'react'
import type { OpenPiece } from '@/app/library'
import { useApp } from './context'
import { piecesText } from '@/text/pieces'
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
  const nameOf = (i: number): string => parts[i]?.name || piecesText.parts.unnamed(i + 1)
  return (
    <aside className="page parts-choice" aria-label={piecesText.parts.label}>
      <details>
        <summary>{piecesText.parts.taken(parts.length, taken.map(nameOf))}</summary>
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
            <legend>{piecesText.parts.choose}</legend>
            {parts.map(({ notes }, i) => (
              <label key={i} className="row tight">
                <input
                  type="checkbox"
                  checked={chosen.includes(i)}
                  disabled={notes === 0}
                  onChange={() => toggle(i)}
                />
                {nameOf(i)} <span className="soft">{piecesText.parts.notes(notes)}</span>
              </label>
            ))}
          </fieldset>
          <p className="soft">{piecesText.parts.otherMusic}</p>
          <button type="submit" disabled={chosen.length === 0 || isSame}>
            {piecesText.parts.take}
          </button>
        </form>
      </details>
    </aside>
  )
}
