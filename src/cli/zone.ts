import { dayAt, type DayOf } from '@/journal/day'
import { failed, ok, type Result } from '@/music/result'
import type { Options } from './options'

/** Clocks change by quarters of an hour at most often, so each is asked for once. */
const quarterMs = 15 * 60_000

/** By what time zone days begin: the one of the option `zone` ('Europe/Vienna'), or this machine's. */
export const daysOf = (options: Options): Result<DayOf, string> => {
  const name = options.get('zone')
  if (name === undefined)
    return ok((epochMs) => dayAt(epochMs, -new Date(epochMs).getTimezoneOffset()))
  const clock = clockIn(String(name))
  if (!clock)
    return failed(`--zone must be the name of a time zone such as Europe/Vienna, not “${name}”.`)
  const known = new Map<number, number>()
  return ok((epochMs) => {
    const quarter = Math.floor(epochMs / quarterMs)
    const east = known.get(quarter) ?? minutesEast(clock, quarter * quarterMs)
    known.set(quarter, east)
    return dayAt(epochMs, east)
  })
}

const clockIn = (timeZone: string): Intl.DateTimeFormat | undefined => {
  try {
    return new Intl.DateTimeFormat('en-u-ca-iso8601', {
      timeZone,
      hourCycle: 'h23',
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
    })
  } catch (error) {
    if (error instanceof RangeError) return undefined
    throw error
  }
}

const minutesEast = (clock: Intl.DateTimeFormat, epochMs: number): number => {
  const parts = new Map(
    clock.formatToParts(epochMs).map(({ type, value }) => [type, Number(value)]),
  )
  const part = (type: Intl.DateTimeFormatPartTypes): number => parts.get(type) ?? 0
  const shown = Date.UTC(part('year'), part('month') - 1, part('day'), part('hour'), part('minute'))
  return (shown - epochMs) / 60_000
}
