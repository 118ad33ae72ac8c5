import { useEffect, useRef, useState } from 'react'
import { pieceText } from '@/text/piece'
import { piecesText } from '@/text/pieces'
import { ChooseFiles, scoreFiles } from './ChooseFiles'
import { useApp } from './context'
import { useInstrument } from './InstrumentState'
import { addFiles } from './useDrop'

/** For who has never played here: what to do with this page, with or without a keyboard, and the way to a piece of one's own. */
export const FirstSteps = () => {
  const app = useApp()
  const picker = useRef<HTMLInputElement>(null)
  const [isNew, setNew] = useState(false)
  const { advice, heard = false } = useInstrument()
  useEffect(() => void app.session.hasPlayed().then((has) => setNew(!has)), [app])
  if (!isNew) return null
  return (
    <aside className="first-steps" aria-label={pieceText.first.label}>
      <p>{pieceText.first.begin}</p>
      {!heard && advice !== undefined && (
        <p>
          {advice} {pieceText.first.watch}
        </p>
      )}
      <button type="button" onClick={() => picker.current?.click()}>
        {pieceText.first.own}
      </button>
      <ChooseFiles
        picker={picker}
        label={piecesText.bring.file}
        accept={scoreFiles}
        choose={(files) => addFiles(app, files)}
      />
    </aside>
  )
}
