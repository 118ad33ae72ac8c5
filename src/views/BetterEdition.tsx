import { useRef, useState } from 'react'
import type { BetterEdition as Edition, ChosenFile, Listed } from '@/app/library'
import { useApp } from './context'
import { ChooseFiles, scoreFiles } from './ChooseFiles'
import { piecesText } from '@/text/pieces'

/** A better edition of a piece: its file is chosen, what of the record holds for it is told, and it is put in place. */
export const BetterEdition = ({ piece: { id, title } }: { readonly piece: Listed }) => {
  const app = useApp()
  const picker = useRef<HTMLInputElement>(null)
  const [edition, setEdition] = useState<Edition>()
  const compare = async ([file]: readonly ChosenFile[]): Promise<void> => {
    if (file) setEdition(await app.library.compareEdition(id, file))
  }
  return (
    <>
      <button type="button" onClick={() => picker.current?.click()}>
        {piecesText.edition.choose}
      </button>
      <ChooseFiles
        picker={picker}
        label={piecesText.edition.fileOf(title)}
        accept={scoreFiles}
        isOne
        choose={compare}
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
