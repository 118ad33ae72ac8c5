import { useCallback, useEffect, useRef, useState } from 'react'
import { formatRoute } from '@/app/route'
import { useApp, useSelected } from './context'

/** The pieces at hand, and the way for one's own to come in. */
export const Pieces = () => {
  const app = useApp()
  const { listed, loading, problem } = useSelected(app.library.store, (state) => state)
  const picker = useRef<HTMLInputElement>(null)
  const take = useCallback(
    async (files: FileList | null | undefined): Promise<void> => {
      for (const file of files ?? [])
        await app.addFile({
          name: file.name,
          size: file.size,
          read: async () => new Uint8Array(await file.arrayBuffer()),
        })
      if (picker.current) picker.current.value = ''
    },
    [app],
  )
  const over = useDrop(take)
  return (
    <main className={over ? 'page drop-here' : 'page'}>
      <h1>Pieces</h1>
      {problem && (
        <p className="notice" role="alert">
          {problem}
        </p>
      )}
      <ul className="pieces">
        {listed.map(({ id, title, remark, from }) => (
          <li key={id}>
            <a href={formatRoute({ kind: 'piece', piece: id })}>{title}</a>
            <span className="soft">{from === 'sample' ? remark : `from ${remark}`}</span>
          </li>
        ))}
      </ul>
      {loading && <p className="soft">Opening the pieces …</p>}
      <section className="bring" aria-labelledby="bring">
        <h2 id="bring">Bring a piece of your own</h2>
        <p>
          A score in MusicXML (<i>.musicxml</i>, <i>.xml</i>, <i>.mxl</i>) serves best; a Standard
          MIDI File (<i>.mid</i>) serves too, best with a track for each hand. Drop it anywhere on
          this page, or choose it. It stays on this machine.
        </p>
        <button type="button" onClick={() => picker.current?.click()}>
          Choose a file …
        </button>
        <input
          ref={picker}
          className="unseen"
          type="file"
          accept={scoreFiles}
          multiple
          tabIndex={-1}
          aria-label="File of a piece"
          onChange={(event) => void take(event.target.files)}
        />
      </section>
    </main>
  )
}

/** What the file dialog offers; the content decides, whatever the name. */
const scoreFiles =
  '.musicxml,.xml,.mxl,.mid,.midi,.kar,.rmi,audio/midi,application/vnd.recordare.musicxml,application/vnd.recordare.musicxml+xml'

/** Files dropped anywhere on the page; tells whether one is held over it. */
const useDrop = (take: (files: FileList | undefined) => Promise<void>): boolean => {
  const [over, setOver] = useState(false)
  useEffect(() => {
    const drag = (event: DragEvent): void => {
      event.preventDefault()
      setOver(true)
    }
    const leave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setOver(false)
    }
    const drop = (event: DragEvent): void => {
      event.preventDefault()
      setOver(false)
      void take(event.dataTransfer?.files)
    }
    window.addEventListener('dragover', drag)
    window.addEventListener('dragleave', leave)
    window.addEventListener('drop', drop)
    return () => {
      window.removeEventListener('dragover', drag)
      window.removeEventListener('dragleave', leave)
      window.removeEventListener('drop', drop)
    }
  }, [take])
  return over
}
