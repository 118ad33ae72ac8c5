import { useCallback, useEffect, useState } from 'react'
import type { Screen } from '@/app/screens'
import { useApp, useSelected } from './context'
import { GoTo } from './GoTo'
import { isField } from './pieceKeys'

/** Where letters play. */
const played: readonly Screen['kind'][] = ['practice', 'tapTest', 'record']

/** G leads to another page, wherever letters are no piano keys. */
export const OtherPage = () => {
  const app = useApp()
  const isPlayed = useSelected(app.screen, ({ kind }) => played.includes(kind))
  const [isOpen, setOpen] = useState(false)
  const close = useCallback(() => setOpen(false), [])
  useEffect(() => {
    if (isPlayed) return
    const press = (event: KeyboardEvent): void => {
      const { key, ctrlKey, altKey, metaKey, repeat, target } = event
      if (key.toLowerCase() !== 'g' || ctrlKey || altKey || metaKey || repeat) return
      if (document.querySelector('dialog[open]') || isField(target)) return
      event.preventDefault()
      event.stopPropagation()
      setOpen(true)
    }
    window.addEventListener('keydown', press, { capture: true })
    return () => window.removeEventListener('keydown', press, { capture: true })
  }, [isPlayed])
  // It comes with the page, since the letter follows at once.
  return isOpen ? <GoTo onClose={close} /> : null
}
