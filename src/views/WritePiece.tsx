import { useEffect, useRef, useState, type ReactNode } from 'react'
import { formatRoute } from '@/app/route'
import { readTyped, typedFile, type Typed } from '@/app/typing'
import { keysText } from '@/text/keys'
import { readingText } from '@/text/reading'
import { tell } from '@/text/told'
import { writeText } from '@/text/write'
import { useApp } from './context'
import { FragmentNotation } from './FragmentNotation'
import { PageKeys } from './PageKeys'
import { phrase } from './phrase'
import { TypedText, type PlacedWords } from './TypedText'
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
  useEffect(() => {
    const press = ({ key, ctrlKey, metaKey }: KeyboardEvent): void => {
      if (key === 'Enter' && (ctrlKey || metaKey)) keep()
    }
    window.addEventListener('keydown', press)
    return () => window.removeEventListener('keydown', press)
  })
  const problem = problemIn(typed)
  return (
    <main className="page write">
      <h1>{writeText.typing.title}</h1>
      <Notes onExample={() => setText(example)} />
      <form
        onSubmit={(event) => {
          event.preventDefault()
          keep()
        }}
      >
        <label htmlFor="notes">{writeText.typing.notes}</label>
        <TypedText ref={field} id="notes" text={text} problem={problem} onChange={setText} />
        <FragmentNotation
          score={typed.kind === 'music' ? typed.score : undefined}
          empty={problem ? writeText.typing.unreadable : writeText.typing.empty}
        />
        <div className="row">
          <label className="row tight title">
            {writeText.titleField}
            <input
              className="wide"
              value={title}
              maxLength={200}
              placeholder={writeText.untitled}
              onChange={({ target }) => setTitle(target.value)}
            />
          </label>
          <button type="submit" className="primary" disabled={typed.kind !== 'music'}>
            {writeText.keep} <kbd>{keysText.names.ctrlEnter}</kbd>
          </button>
          <a className="button" href={formatRoute({ kind: 'pieces' })}>
            {writeText.backToPieces}
          </a>
          <PageKeys
            keys={[
              { key: 'ctrl enter', shown: keysText.names.ctrlEnter, words: keysText.keepPiece },
            ]}
          />
        </div>
      </form>
    </main>
  )
}

/** What is wrong, in words; what is wrong with all of it stands at its beginning. */
const problemIn = (typed: Typed): PlacedWords | undefined => {
  switch (typed.kind) {
    case 'empty':
    case 'music':
      return undefined
    case 'problem':
      return { ...typed.problem, words: tell(readingText.typed, typed.problem.flaw) }
    case 'unsound':
      return { line: 1, column: 1, width: 1, words: tell(readingText.problems, typed.reason) }
  }
}

/** In the words of the notation itself. */
const notation = {
  settings: 'time 3/4 key G tempo 80',
  pickup: 'pickup 1',
  hands: ['right:', 'left:'].join(' '),
  pitches: 'C4 F#5 Bb3',
  lengths: 'C4:1 D4:1/2 E4:1.5',
  rest: 'r',
  chord: '[C4 E4 G4]:2',
  held: 'C4:3 | -:1',
  barLine: '|',
} as const

const Notes = ({ onExample }: { readonly onExample: () => void }) => (
  <details className="how">
    <summary>{writeText.how.title}</summary>
    <dl>
      <dt>{notation.settings}</dt>
      <dd>{phrase(writeText.how.settings<ReactNode>(<i>{notation.pickup}</i>))}</dd>
      <dt>{notation.hands}</dt>
      <dd>{writeText.how.hands}</dd>
      <dt>{notation.pitches}</dt>
      <dd>{writeText.how.pitches}</dd>
      <dt>{notation.lengths}</dt>
      <dd>{writeText.how.lengths}</dd>
      <dt>{notation.rest}</dt>
      <dd>{writeText.how.rest}</dd>
      <dt>{notation.chord}</dt>
      <dd>{writeText.how.chord}</dd>
      <dt>{notation.held}</dt>
      <dd>{writeText.how.held}</dd>
      <dt>{notation.barLine}</dt>
      <dd>{writeText.how.barLines}</dd>
    </dl>
    <button type="button" onClick={onExample}>
      {writeText.how.example}
    </button>
  </details>
)
