import { useId, useState } from 'react'
import type { Listed } from '@/app/library'
import { remarkOf } from '@/app/remarkOf'
import { formatRoute } from '@/app/route'
import { BetterEdition } from './BetterEdition'
import { piecesText } from '@/text/pieces'
import { useApp } from './context'

/** A piece in the list; one's own can be given another title or removed. */
export const PieceRow = ({
  piece,
  onRemove,
}: {
  readonly piece: Listed
  readonly onRemove: () => Promise<void>
}) => {
  const { id, title, composer, from } = piece
  const remark = remarkOf(piece)
  const [editing, setEditing] = useState(false)
  return (
    <li>
      <a href={formatRoute({ kind: 'piece', piece: id })}>{title}</a>
      {composer && <span>{composer}</span>}
      <span className="soft piece-remark">
        {from === 'sample' ? remark : piecesText.row.fromFile(remark)}
      </span>
      {from === 'file' && (
        <button
          type="button"
          className="plain"
          aria-expanded={editing}
          aria-label={piecesText.row.changeOf(title)}
          onClick={() => setEditing(!editing)}
        >
          {piecesText.row.change}
        </button>
      )}
      {editing && <Change piece={piece} onDone={() => setEditing(false)} onRemove={onRemove} />}
    </li>
  )
}

/** The button that was pressed is gone: the focus goes to the answer that changes nothing. */
const focusOn = (button: HTMLButtonElement | null): void => button?.focus()

const Change = ({
  piece,
  onDone,
  onRemove,
}: {
  readonly piece: Listed
  readonly onDone: () => void
  readonly onRemove: () => Promise<void>
}) => {
  const app = useApp()
  const { id, title } = piece
  const field = useId()
  const [text, setText] = useState(title)
  const [asking, setAsking] = useState(false)
  const wanted = text.trim()
  const rename = async (): Promise<void> => {
    await app.library.rename(id, wanted)
    onDone()
  }
  if (asking)
    return (
      <div className="piece-change" role="group" aria-label={piecesText.row.removeOf(title)}>
        <p>{piecesText.row.sure(title)}</p>
        <div className="row">
          <button type="button" onClick={() => void onRemove()}>
            {piecesText.row.removeIt}
          </button>
          <button type="button" ref={focusOn} onClick={() => setAsking(false)}>
            {piecesText.row.keepIt}
          </button>
        </div>
      </div>
    )
  return (
    <form
      className="piece-change"
      onSubmit={(event) => {
        event.preventDefault()
        if (wanted !== '') void rename()
      }}
    >
      <label htmlFor={field}>{piecesText.row.title}</label>
      <div className="row">
        <input
          id={field}
          className="wide"
          value={text}
          maxLength={200}
          onChange={({ target }) => setText(target.value)}
        />
        <button type="submit" disabled={wanted === '' || wanted === title}>
          {piecesText.row.rename}
        </button>
      </div>
      <div className="row">
        <BetterEdition piece={piece} />
        <button type="button" onClick={() => setAsking(true)}>
          {piecesText.row.remove}
        </button>
      </div>
    </form>
  )
}
