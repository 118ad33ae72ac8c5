import { useEffect, useRef, useState } from 'react'
import { formatRoute } from '@/app/route'
import { readTyped, typedFile, untitled, type Typed } from '@/app/typing'
import { useApp } from './context'
import { FragmentNotation } from './FragmentNotation'
import { TypedText } from './TypedText'
import './pieces.css'

/** Reading is quick, drawing is not: the notes are drawn when the fingers rest. */
const restMs = 300

const example = `time 3/4  key G  tempo 80
right: D5:1 G4:1/2 A4 B4 C5 | D5:1 G4 G4
left: [G3 B3 D4]:2 A3:1 | B3:3
`

/** A fragment is typed in: the text, the notes it makes, and what is wrong at its place. */
export const WritePiece = () => {
  const app = useApp()
  const field = useRef<HTMLTextAreaElement>(null)
  const [text, setText] = useState('')
  const [title, setTitle] = useState('')
  const [typed, setTyped] = useState<Typed>({ kind: 'empty' })
  useEffect(() => {
    const timer = window.setTimeout(() => setTyped(readTyped(text, title)), restMs)
    return () => window.clearTimeout(timer)
  }, [text, title])
  const keep = (): void => {
    const now = readTyped(text, title)
    setTyped(now)
    if (now.kind === 'music') void app.addFile(typedFile(text, title))
  }
  const problem = typed.kind === 'problem' ? typed.problem : undefined
  return (
    <main className="page write">
      <h1>Write a fragment</h1>
      <Notes onExample={() => setText(example)} />
      <form
        onSubmit={(event) => {
          event.preventDefault()
          keep()
        }}
      >
        <label htmlFor="notes">Notes</label>
        <TypedText ref={field} id="notes" text={text} problem={problem} onChange={setText} />
        <FragmentNotation
          score={typed.kind === 'music' ? typed.score : undefined}
          empty={
            typed.kind === 'problem'
              ? 'The notes stand here again when the text can be read.'
              : 'The notes stand here as you write.'
          }
        />
        <div className="row">
          <label className="row tight title">
            Title
            <input
              className="wide"
              value={title}
              maxLength={200}
              placeholder={untitled}
              onChange={({ target }) => setTitle(target.value)}
            />
          </label>
          <button type="submit" className="primary" disabled={typed.kind !== 'music'}>
            Keep it as a piece
          </button>
          <a className="button" href={formatRoute({ kind: 'pieces' })}>
            Back to the pieces
          </a>
        </div>
      </form>
    </main>
  )
}

const Notes = ({ onExample }: { readonly onExample: () => void }) => (
  <details className="how">
    <summary>How it is written</summary>
    <dl>
      <dt>time 3/4 key G tempo 80</dt>
      <dd>
        on the first line, each of them only where it is needed; <i>pickup 1</i> for a pickup of a
        quarter
      </dd>
      <dt>right: left:</dt>
      <dd>begin a line of a hand; its next line goes on where it ended</dd>
      <dt>C4 F#5 Bb3</dt>
      <dd>pitches; middle C is C4</dd>
      <dt>C4:1 D4:1/2 E4:1.5</dt>
      <dd>a quarter, an eighth, a dotted quarter; a length holds until the next</dd>
      <dt>r</dt>
      <dd>a rest</dd>
      <dt>[C4 E4 G4]:2</dt>
      <dd>a chord</dd>
      <dt>C4:3 | -:1</dt>
      <dd>holds the note over the bar line</dd>
      <dt>|</dt>
      <dd>bar lines may be left out; where they stand, the bar is counted</dd>
    </dl>
    <button type="button" onClick={onExample}>
      Put an example in
    </button>
  </details>
)
