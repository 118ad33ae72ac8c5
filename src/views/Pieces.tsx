import { useRef, useState, type ChangeEvent } from 'react'
import { formatRoute } from '@/app/route'
import { searchPieces } from '@/app/searchPieces'
import { useApp, useSelected } from './context'
import { Kept } from './Kept'
import { PieceRow } from './PieceRow'
import { TodayWay } from './TodayWay'
import { addFiles, scoreFiles } from './useDrop'
import { plural } from '@/text/plural'
import './pieces.css'

/** The pieces at hand, and the ways for one's own to come in. */
export const Pieces = () => {
  const app = useApp()
  const { listed, loading } = useSelected(app.library.store, (state) => state)
  const [wanted, setWanted] = useState('')
  const [said, setSaid] = useState('')
  const search = useRef<HTMLInputElement>(null)
  const found = searchPieces(listed, wanted)
  const remove = async (id: (typeof listed)[number]['id'], title: string): Promise<void> => {
    await app.library.remove(id)
    if (app.library.store.getState().listed.some((piece) => piece.id === id)) return
    setSaid(`“${title}” is removed. The record of your practice of it stays.`)
    search.current?.focus()
  }
  return (
    <main className="page">
      <div className="row pieces-head">
        <h1>Pieces</h1>
        <a href={formatRoute({ kind: 'notebook' })}>Notebook of all pieces</a>
      </div>
      <TodayWay />
      <label className="row search">
        Search
        <input
          ref={search}
          type="search"
          value={wanted}
          onChange={({ target }) => setWanted(target.value)}
        />
        <span className="soft" role="status">
          {wanted.trim() === '' ? said : describeFound(found.length, listed.length)}
        </span>
      </label>
      <ul className="pieces">
        {found.map((piece) => (
          <PieceRow key={piece.id} piece={piece} onRemove={() => remove(piece.id, piece.title)} />
        ))}
      </ul>
      {loading && <p className="soft">Opening the pieces …</p>}
      <Bring />
      <section className="bring" aria-labelledby="make">
        <h2 id="make">Make a fragment of your own</h2>
        <p>A few bars from a book, or an exercise that your teacher wrote down for you.</p>
        <p className="row">
          <a className="button" href={formatRoute({ kind: 'write' })}>
            Write a fragment
          </a>
          <a className="button" href={formatRoute({ kind: 'record' })}>
            Play a fragment in
          </a>
        </p>
      </section>
      <Kept />
    </main>
  )
}

const describeFound = (found: number, all: number): string =>
  found === 0 ? 'No piece has all of these words.' : `${found} of ${plural(all, 'piece')}`

const Bring = () => {
  const app = useApp()
  const picker = useRef<HTMLInputElement>(null)
  const take = async ({ target }: ChangeEvent<HTMLInputElement>): Promise<void> => {
    await addFiles(app, target.files)
    target.value = ''
  }
  return (
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
  )
}
