import { pedals, type KeyEvent, type Take } from '@/music/keyEvent'
import { failed, ok, type Result } from '@/music/result'
import { key, ms, type Ms } from '@/music/units'
import { formatBase64, parseBase64 } from './base64'

/**
 * A take as short text: for each key event the time since the one before in tenths of a millisecond
 * (the first: since `origin`), then two bytes, all in base64. The time is a signed number in groups
 * of seven bits, the low group first. The two bytes are key and velocity for a key pressed, key and 0
 * for a key released, 128 + the pedal's place in `pedals` and the value for a pedal.
 * Four or five bytes an event, so six letters as a rule and never twelve for gaps under 28 hours.
 */
export const encodeTake = (take: Take, origin: Ms): string => {
  const bytes: number[] = []
  let last = 0
  for (const event of take.events) {
    const tenths = Math.round((event.at - origin) * 10)
    pushSigned(bytes, tenths - last)
    last = tenths
    bytes.push(...bodyOf(event))
  }
  return formatBase64(bytes)
}

export type TakeProblem =
  | { readonly kind: 'notBase64' }
  | { readonly kind: 'cutShort'; readonly events: number }
  | { readonly kind: 'unknownEvent'; readonly events: number }

/** The inverse, to a tenth of a millisecond. `events` of a problem is how many were read before it. */
export const decodeTake = (text: string, origin: Ms): Result<Take, TakeProblem> => {
  const bytes = parseBase64(text)
  if (!bytes) return failed({ kind: 'notBase64' })
  const events: KeyEvent[] = []
  let tenths = 0
  for (let place = 0; place < bytes.length;) {
    const read = readSigned(bytes, place)
    const [first, second] = [bytes[read.end], bytes[read.end + 1]]
    if (first === undefined || second === undefined)
      return failed({ kind: 'cutShort', events: events.length })
    tenths += read.value
    const event = eventOf(first, second, ms(origin + tenths / 10))
    if (!event) return failed({ kind: 'unknownEvent', events: events.length })
    events.push(event)
    place = read.end + 2
  }
  return ok({ events })
}

const firstPedal = 128

const bodyOf = (event: KeyEvent): readonly [number, number] => {
  switch (event.kind) {
    case 'down':
      return [event.key, event.velocity]
    case 'up':
      return [event.key, 0]
    case 'pedal':
      return [firstPedal + pedals.indexOf(event.pedal), event.value]
  }
}

const eventOf = (first: number, second: number, at: Ms): KeyEvent | undefined => {
  if (second > 127) return undefined
  if (first >= firstPedal) {
    const pedal = pedals[first - firstPedal]
    return pedal && { kind: 'pedal', pedal, value: second, at }
  }
  return second === 0
    ? { kind: 'up', key: key(first), at }
    : { kind: 'down', key: key(first), velocity: second, at }
}

/** Zigzag (0, -1, 1, -2 ... as 0, 1, 2, 3 ...), then seven bits a byte, low first, the top bit for more. */
const pushSigned = (bytes: number[], value: number): void => {
  let rest = value < 0 ? -2 * value - 1 : 2 * value
  for (; rest >= 128; rest = Math.floor(rest / 128)) bytes.push((rest % 128) + 128)
  bytes.push(rest)
}

const readSigned = (
  bytes: readonly number[],
  begin: number,
): { readonly value: number; readonly end: number } => {
  let zigzag = 0
  let weight = 1
  let end = begin
  for (;;) {
    const byte = bytes[end++]
    if (byte === undefined) break
    zigzag += (byte % 128) * weight
    weight *= 128
    if (byte < 128) break
  }
  return { value: zigzag % 2 === 1 ? -(zigzag + 1) / 2 : zigzag / 2, end }
}
