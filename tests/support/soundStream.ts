import type { KeyEvent } from '@/music/keyEvent'

/** What is wrong with a stream of key events; empty when it is sound. */
export const faultsOf = (events: readonly KeyEvent[], ended: boolean): string[] => {
  const faults: string[] = []
  const down = new Set<number>()
  let last = -Infinity
  for (const event of events) {
    if (event.at < last) faults.push(`${event.kind} at ${event.at} after ${last}`)
    last = event.at
    if (event.kind === 'pedal') continue
    if (event.key < 0 || event.key > 127) faults.push(`key ${event.key}`)
    if (event.kind === 'down') {
      if (down.has(event.key)) faults.push(`${event.key} down twice at ${event.at}`)
      if (event.velocity < 1 || event.velocity > 127) faults.push(`velocity ${event.velocity}`)
      down.add(event.key)
    } else if (!down.delete(event.key)) faults.push(`${event.key} up without a down at ${event.at}`)
  }
  if (ended) for (const key of down) faults.push(`${key} is stuck`)
  return faults
}

/** 'down60@1 up60@2 sustain127@3' */
export const inShort = (events: readonly KeyEvent[]): string =>
  events
    .map((e) => (e.kind === 'pedal' ? `${e.pedal}${e.value}` : `${e.kind}${e.key}`) + `@${e.at}`)
    .join(' ')
