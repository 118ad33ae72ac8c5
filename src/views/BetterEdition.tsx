import { useRef, useState, type ChangeEvent } from 'react'
import type { BetterEdition as Edition, Listed } from '@/app/library'
import { useApp } from './context'
import { chosenFile, scoreFiles } from './useDrop'
import { piecesText } from '@/text/pieces'

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
        {piecesText.edition.choose}
      </button>
      <input
        ref={picker}
        className="unseen"
        type="file"
        accept={scoreFiles}
        tabIndex={-1}
        aria-label={piecesText.edition.fileOf(title)}
        onChange={(event) => void choose(event)}
      />
      {edition && (
        <div className="piece-change" role="group" aria-label={piecesText.edition.replaceOf(title)}>
          <p role="status">{describe(edition)}</p>
          <div className="row">
            <button type="button" onClick={() => void app.replaceEdition(edition)}>
              {piecesText.edition.replace}
            </button>
            <button type="button" onClick={() => setEdition(undefined)}>
              {piecesText.edition.keepOld}
            </button>
          </div>
        </div>
      )}
    </>
  )
}

const describe = ({ replaces, piece, practised, agreeing }: Edition): string => {
  const { fileName } = piece
  if (piece.id === replaces) return piecesText.edition.same(fileName)
  if (practised === 0) return piecesText.edition.unpractised(fileName)
  return piecesText.edition.carries(practised, agreeing, fileName)
}
