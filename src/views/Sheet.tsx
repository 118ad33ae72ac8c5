import { useEffect, useRef, type ReactNode } from 'react'
import { isField } from './pieceKeys'

/** A sheet that opens under its word in the head; Escape, a press elsewhere or another page closes it. */
export const Sheet = ({
  word,
  className = '',
  shortcut,
  children,
}: {
  readonly word: ReactNode
  readonly className?: string
  /** The key that opens it, as the browser names it. */
  readonly shortcut?: string
  readonly children: ReactNode
}) => {
  const details = useRef<HTMLDetailsElement>(null)
  const byPointer = useRef(false)
  useEffect(() => {
    const close = (): void => {
      if (details.current) details.current.open = false
    }
    const onPress = (event: PointerEvent): void => {
      if (event.target instanceof Node && !details.current?.contains(event.target)) close()
    }
    let before: Element | null = null
    const openByKey = (): void => {
      before = document.activeElement
      if (details.current) details.current.open = true
      details.current?.querySelector('summary')?.focus()
    }
    /** Where the focus was, so that Space and Enter mean at once again what they mean on the page. */
    const goBack = (): void => {
      const summary = details.current?.querySelector('summary')
      if (before instanceof HTMLElement && before !== document.body) before.focus()
      else if (before) summary?.blur()
      else summary?.focus()
      before = null
    }
    const onKey = (event: KeyboardEvent): void => {
      if (event.key === shortcut && !details.current?.open && !isField(event.target)) {
        if (
          event.ctrlKey ||
          event.altKey ||
          event.metaKey ||
          document.querySelector('dialog[open]')
        )
          return
        event.preventDefault()
        return openByKey()
      }
      if (event.code !== 'Escape' || !details.current?.open) return
      // Escape closes the sheet and does not end the drill behind it.
      event.stopImmediatePropagation()
      close()
      goBack()
    }
    window.addEventListener('hashchange', close)
    window.addEventListener('pointerdown', onPress)
    window.addEventListener('keydown', onKey, { capture: true })
    return () => {
      window.removeEventListener('hashchange', close)
      window.removeEventListener('pointerdown', onPress)
      window.removeEventListener('keydown', onKey, { capture: true })
    }
  }, [shortcut])
  return (
    <details ref={details} className={className}>
      <summary
        onPointerDown={() => {
          byPointer.current = true
        }}
        onKeyDown={() => {
          byPointer.current = false
        }}
        onClick={({ currentTarget }) => {
          // Closed by a press: Space and Enter mean at once again what they mean on the page.
          if (details.current?.open && byPointer.current) currentTarget.blur()
        }}
      >
        {word}
      </summary>
      <div className="sheet-of-paper">{children}</div>
    </details>
  )
}
