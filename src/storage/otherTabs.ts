import { decodeEvent } from '@/journal/decode'
import type { JournalEvent } from '@/journal/journal'

/** The tabs that have the same database open, as each tells the others what it has stored. */
export interface OtherTabs {
  readonly tell: (event: JournalEvent) => void
  readonly watch: (see: (event: JournalEvent) => void) => () => void
  readonly close: () => void
}

/** Another tab may run an older or newer version, so what it tells is decoded like anything from outside. */
export const watchOtherTabs = (name: string): OtherTabs => {
  const channel = new BroadcastChannel(`${name} journal`)
  const watchers = new Set<(event: JournalEvent) => void>()
  channel.addEventListener('message', ({ data }) => {
    const event = decodeEvent(data)
    if (event.ok) for (const see of watchers) see(event.value)
  })
  return {
    tell: (event) => channel.postMessage(event),
    watch: (see) => {
      watchers.add(see)
      return () => watchers.delete(see)
    },
    close: () => channel.close(),
  }
}
