import type { Mark } from '@/judge/flaw'
import type { Effect } from './drill'
import type { Stop } from './ports'

export type MarkChange =
  | { readonly kind: 'mark'; readonly slot: string; readonly mark: Mark }
  | { readonly kind: 'unmark'; readonly slot: string }
  /** All marks changed: a repetition began or was judged. */
  | { readonly kind: 'all' }

/** The marks on the notation, by slot. They reach the page by subscription, key by key, past rendering. */
export interface MarkBoard {
  readonly now: () => ReadonlyMap<string, Mark>
  readonly watch: (see: (change: MarkChange) => void) => Stop
  readonly take: (effect: Effect) => void
  readonly clear: () => void
}

export const createMarkBoard = (): MarkBoard => {
  const marks = new Map<string, Mark>()
  const watchers = new Set<(change: MarkChange) => void>()
  const tell = (change: MarkChange): void => {
    for (const see of watchers) see(change)
  }
  const replace = (all: readonly Mark[]): void => {
    marks.clear()
    all.forEach((mark, i) => marks.set(`${i}`, mark))
    tell({ kind: 'all' })
  }
  return {
    now: () => marks,
    watch: (see) => {
      watchers.add(see)
      return () => watchers.delete(see)
    },
    clear: () => replace([]),
    take: (effect) => {
      switch (effect.kind) {
        case 'began':
          return replace([])
        case 'judged':
          return replace(effect.repetition.marks)
        case 'mark':
          marks.set(effect.slot, effect.mark)
          return tell(effect)
        case 'unmark':
          marks.delete(effect.slot)
          return tell(effect)
        case 'stray':
        case 'coach':
          return
      }
    },
  }
}
