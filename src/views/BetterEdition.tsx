import { useRef, useState, type ChangeEvent } from 'react'
import type { BetterEdition as Edition, Listed } from '@/app/library'
import { useApp } from './context'
import { chosenFile, scoreFiles } from './useDrop'
import { plural } from '@/text/plural'

/** A better edition of a piece: its file is chosen, what of the record holds for it is told, and it is put in place. */
export const BetterEdition = ({ piece: { id, title } }: { readonly piece: Listed }) => {
  const app = useApp()
  const picker = useRef<HTMLInputElement>(null)
  const [edition, setEdition] = useState<Edition>()
  const choose = async ({ target }: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const [file] = target.files ?? []
    if (file) setEdition(await app.library.compareEdition(id, chosenFile(file)))
    target.value = ''
  }
  return (
    <>
      <button type="button" onClick={() => picker.current?.click()}>
        A better edition …
      </button>
      <input
        ref={picker}
        className="unseen"
        type="file"
        accept={scoreFiles}
        tabIndex={-1}
        aria-label={`File of a better edition of ${title}`}
        onChange={(event) => void choose(event)}
      />
      {edition && (
        <div className="piece-change" role="group" aria-label={`Replace ${title}`}>
          <p role="status">{describe(edition)}</p>
          <div className="row">
            <button type="button" onClick={() => void app.replaceEdition(edition)}>
              Replace it
            </button>
            <button type="button" onClick={() => setEdition(undefined)}>
              Keep the old one
            </button>
          </div>
        </div>
      )}
    </>
  )
}

const describe = ({ replaces, piece, practised, agreeing }: Edition): string => {
  const file = `“${piece.fileName}”`
  if (piece.id === replaces)
    return `${file} has the same notes throughout: the whole record holds for it.`
  if (practised === 0)
    return `Nothing of it has been practised yet, so no record need carry over to ${file}.`
  const rest = practised - agreeing
  const kept =
    rest === 0 ? '' : ` The record of the other ${rest} stays, but does not count for it.`
  return `Of ${plural(practised, 'practised chunk')}, ${agreeing} ${
    agreeing === 1 ? 'has' : 'have'
  } the same notes in ${file} and ${agreeing === 1 ? 'carries' : 'carry'} over.${kept}`
}
