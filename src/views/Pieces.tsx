import { useRef, type ChangeEvent } from 'react'
import { formatRoute } from '@/app/route'
import { useApp, useSelected } from './context'
import { addFiles } from './useDrop'

/** The pieces at hand, and the way for one's own to come in. */
export const Pieces = () => {
  const app = useApp()
  const { listed, loading } = useSelected(app.library.store, (state) => state)
  const picker = useRef<HTMLInputElement>(null)
  const take = async ({ target }: ChangeEvent<HTMLInputElement>): Promise<void> => {
    await addFiles(app, target.files)
    target.value = ''
  }
  return (
    <main className="page">
      <h1>Pieces</h1>
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
          MIDI File (<i>.mid</i>) serves too, best with a track for each hand. Drop it anywhere, or
          choose it. It stays on this machine.
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
          onChange={(event) => void take(event)}
        />
      </section>
    </main>
  )
}

/** What the file dialog offers; the content decides, whatever the name. */
const scoreFiles =
  '.musicxml,.xml,.mxl,.mid,.midi,.kar,.rmi,audio/midi,application/vnd.recordare.musicxml,application/vnd.recordare.musicxml+xml'
