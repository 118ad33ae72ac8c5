import { useEffect, useRef, type Ref } from 'react'
import type { TypedProblem } from '@/score/typedMusic'
import { writeText } from '@/text/write'

/** What is wrong with a text and where. */
export interface PlacedWords extends Pick<TypedProblem, 'line' | 'column' | 'width'> {
  readonly words: string
}

/**
 * The text of a fragment in a field, and behind it the same text unseen, in which the place that
 * cannot be read is underlined. The sentence below names line and column, and leads there.
 */
export const TypedText = ({
  id,
  text,
  problem,
  onChange,
  ref,
}: {
  readonly id: string
  readonly text: string
  readonly problem: PlacedWords | undefined
  readonly onChange: (text: string) => void
  readonly ref: Ref<HTMLTextAreaElement>
}) => {
  const field = useRef<HTMLTextAreaElement>(null)
  const behind = useRef<HTMLDivElement>(null)
  const span = problem && spanOf(text, problem)
  const follow = (): void => {
    if (field.current && behind.current) behind.current.scrollTop = field.current.scrollTop
  }
  useEffect(follow)
  const goThere = (): void => {
    if (!span || !field.current) return
    field.current.focus()
    field.current.setSelectionRange(span.from, span.to)
  }
  return (
    <div className="typed">
      <div className="typed-box">
        <div ref={behind} className="typed-behind" aria-hidden="true">
          {span ? (
            <>
              {text.slice(0, span.from)}
              <mark>{text.slice(span.from, span.to) || ' '}</mark>
              {text.slice(span.to)}
            </>
          ) : (
            text
          )}{' '}
        </div>
        <textarea
          id={id}
          ref={(element) => {
            field.current = element
            if (typeof ref === 'function') ref(element)
            else if (ref) ref.current = element
          }}
          rows={6}
          value={text}
          spellCheck={false}
          autoCapitalize="off"
          autoCorrect="off"
          aria-describedby={`${id}-problem`}
          aria-invalid={problem !== undefined}
          onScroll={follow}
          onChange={({ target }) => onChange(target.value)}
        />
      </div>
      <p id={`${id}-problem`} className="typed-problem" role="status" aria-live="polite">
        {problem && (
          <>
            <button type="button" className="plain" onClick={goThere}>
              {writeText.typing.place(problem.line, problem.column)}
            </button>{' '}
            {problem.words}
          </>
        )}
      </p>
    </div>
  )
}

/** Where in the text a problem stands, in UTF-16 code units as the field counts them. */
const spanOf = (
  text: string,
  { line, column, width }: PlacedWords,
): { readonly from: number; readonly to: number } => {
  const lines = text.split('\n')
  const before = lines.slice(0, line - 1).reduce((sum, each) => sum + each.length + 1, 0)
  const from = Math.min(text.length, before + column - 1)
  return { from, to: Math.min(text.length, from + width) }
}
