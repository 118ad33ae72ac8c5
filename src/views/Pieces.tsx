import { useRef, useState, type ReactNode, type RefObject } from 'react'
import { formatRoute } from '@/app/route'
import { searchPieces } from '@/app/searchPieces'
import { ChooseFiles, scoreFiles } from './ChooseFiles'
import { useApp, useSelected } from './context'
import { Kept } from './Kept'
import { PageKeys } from './PageKeys'
import { PieceRow } from './PieceRow'
import { TodayWay } from './TodayWay'
import { addFiles } from './useDrop'
import { phrase } from './phrase'
import { keysText } from '@/text/keys'
import { piecesText } from '@/text/pieces'
import './pieces.css'

/** The pieces at hand, and the ways for one's own to come in. */
export const Pieces = () => {
  const app = useApp()
  const { listed, loading } = useSelected(app.library.store, (state) => state)
  const [wanted, setWanted] = useState('')
  const [said, setSaid] = useState('')
  const search = useRef<HTMLInputElement>(null)
  const picker = useRef<HTMLInputElement>(null)
  const { pieces: keys } = keysText
  const go = (kind: 'today' | 'write' | 'record') => (): void => app.go({ kind })
  const found = searchPieces(listed, wanted)
  const remove = async (id: (typeof listed)[number]['id'], title: string): Promise<void> => {
    await app.library.remove(id)
    if (app.library.store.getState().listed.some((piece) => piece.id === id)) return
    setSaid(piecesText.removed(title))
    search.current?.focus()
  }
  return (
    <main className="page">
      <div className="row pieces-head">
        <h1>{piecesText.title}</h1>
        <a href={formatRoute({ kind: 'notebook' })}>{piecesText.notebook}</a>
        <PageKeys
          keys={[
            { key: 't', shown: 'T', words: keys.today, run: go('today') },
            { key: 'f', shown: 'F', words: keys.search, run: () => search.current?.focus() },
            { key: 'o', shown: 'O', words: keys.bring, run: () => picker.current?.click() },
            { key: 'w', shown: 'W', words: keys.write, run: go('write') },
            { key: 'r', shown: 'R', words: keys.record, run: go('record') },
          ]}
        />
      </div>
      <TodayWay />
      <label className="row search">
        {piecesText.search}
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
      {loading && <p className="soft">{piecesText.opening}</p>}
      <Bring picker={picker} />
      <section className="bring" aria-labelledby="make">
        <h2 id="make">{piecesText.make.title}</h2>
        <p>{piecesText.make.what}</p>
        <p className="row">
          <a className="button" href={formatRoute({ kind: 'write' })}>
            {piecesText.make.write} <kbd>W</kbd>
          </a>
          <a className="button" href={formatRoute({ kind: 'record' })}>
            {piecesText.make.record} <kbd>R</kbd>
          </a>
        </p>
      </section>
      <Kept />
    </main>
  )
}

const describeFound = (found: number, all: number): string =>
  found === 0 ? piecesText.noneFound : piecesText.found(found, all)

const endings = { musicXml: ['.musicxml', '.xml', '.mxl'], midi: '.mid' } as const

const Bring = ({ picker }: { readonly picker: RefObject<HTMLInputElement | null> }) => {
  const app = useApp()
  return (
    <section className="bring" aria-labelledby="bring">
      <h2 id="bring">{piecesText.bring.title}</h2>
      <p>
        {phrase(
          piecesText.bring.how<ReactNode>(
            endings.musicXml.map((ending) => <i key={ending}>{ending}</i>),
            <i>{endings.midi}</i>,
          ),
        )}
      </p>
      <button type="button" onClick={() => picker.current?.click()}>
        {piecesText.bring.choose} <kbd>O</kbd>
      </button>
      <ChooseFiles
        picker={picker}
        label={piecesText.bring.file}
        accept={scoreFiles}
        choose={(files) => addFiles(app, files)}
      />
    </section>
  )
}
