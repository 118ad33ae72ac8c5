import { useMemo } from 'react'
import { parseNotebookText, type Line, type Span } from '@/app/notebookText'

/** The text of an entry. A link is shown with its address, and leads there only when it is pressed. */
export const NotebookText = ({ text }: { readonly text: string }) => {
  const blocks = useMemo(() => parseNotebookText(text), [text])
  return (
    <div className="notebook-text">
      {blocks.map((block, i) =>
        block.kind === 'list' ? (
          <ul key={i}>
            {block.items.map((item, k) => (
              <li key={k}>
                <Spans line={item} />
              </li>
            ))}
          </ul>
        ) : (
          <p key={i}>
            {block.lines.map((line, k) => (
              <span key={k} className="notebook-line">
                <Spans line={line} />
              </span>
            ))}
          </p>
        ),
      )}
    </div>
  )
}

const Spans = ({ line }: { readonly line: Line }) =>
  line.map((span, i) => <SpanOf key={i} span={span} />)

const SpanOf = ({ span }: { readonly span: Span }) => {
  switch (span.kind) {
    case 'plain':
      return span.text
    case 'emphasis':
      return <em>{span.text}</em>
    case 'link':
      return (
        <>
          <a href={span.address} target="_blank" rel="noopener noreferrer">
            {span.text}
          </a>
          {span.text !== span.address && <span className="soft"> ({span.address})</span>}
        </>
      )
  }
}
