import { useCallback, useEffect, useMemo, useState } from 'react'
import type { Draft } from '@/app/notebook'
import type { NotebookWritten, RecordedPlace } from '@/journal/journal'
import { areMeeting } from '@/music/place'
import type { PieceId } from '@/music/units'
import { useApp, useSelected } from './context'
import { useKeys } from './shortcuts'

/** The notebook of a piece, opened over the page by 9; `hold` keeps what is under way waiting meanwhile. */
export const useNotebookKey = (hold?: () => () => void) => {
  const [isOpen, setOpen] = useState(false)
  const open = useCallback(() => setOpen(true), [])
  const close = useCallback(() => setOpen(false), [])
  useKeys({ Digit9: open })
  useEffect(() => (isOpen ? hold?.() : undefined), [isOpen, hold])
  return { isOpen, open, close }
}

/** The entries of a piece, the newest first; read anew when the page asks for them. */
export const useEntries = (piece: PieceId): readonly NotebookWritten[] => {
  const app = useApp()
  const all = useSelected(app.notebook.store, ({ entries }) => entries)
  useEffect(() => void app.notebook.load(), [app])
  return useMemo(() => all.filter((entry) => entry.piece === piece), [all, piece])
}

/** The entry's place has something of the bars in hand. */
export const isOf = (
  { place }: Pick<NotebookWritten, 'place'>,
  here: RecordedPlace | undefined,
): boolean => place !== undefined && here !== undefined && areMeeting(place, here)

export const draftOf = ({ id, place, subject, helped, text }: NotebookWritten): Draft => ({
  place,
  subject,
  helped,
  text,
  replaces: id,
})
