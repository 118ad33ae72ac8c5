import type { Page } from '@playwright/test'
import { parseKey } from '@/music/pitch'

/** What is seen of one key, milliseconds. */
export interface Sight {
  /** From the dispatch of the key to its end: judge, coach and page together. */
  readonly heard: number
  /** From the dispatch to the moment at which the mark stands in the document. */
  readonly marked: number
  /** From the dispatch to the beginning of the frame after that one: the mark is painted by then. */
  readonly painted: number
  /** Marks on the notation in the first frame after the key, and how many there are with its own; 0 in a repetition with a slip. */
  readonly marks: number
  readonly wanted: number
}

export interface Played {
  readonly keyboard: string
  /** The passage, a note to an onset. */
  readonly keys: readonly number[]
  /** From one onset to the next. */
  readonly gapMs: number
  readonly repetitions: number
  /** In each so-manieth repetition one key, each time another, is a semitone too high; none where left out. */
  readonly slipEach?: number
}

/**
 * Plays a passage again and again, each time when the verdict of the last shows; each key is
 * dispatched with the present time. All of it runs in the page, so that nothing of the test's own
 * falls between two keys. Where the machine stood still, the hands go on from there at their pace: to
 * catch up, they would strike all the keys that were due at once, as no hands do.
 */
export const playAndLook = (page: Page, played: Played): Promise<Sight[]> =>
  page.evaluate(
    async ([keyboard, keys, gap, times, slipEach]) => {
      /** A verdict that has not come by then is missing, and the next repetition begins. */
      const patience = 5_000
      const frame = (): Promise<number> => new Promise((seen) => requestAnimationFrame(seen))
      const svg = document.querySelector('.notation svg')
      if (!svg) throw new Error('there is no notation')
      let changedAt = 0
      new MutationObserver(() => {
        changedAt = performance.now()
      }).observe(svg, { childList: true, subtree: true })
      const strokes = (): string | null | undefined =>
        document.querySelector('.strokes')?.getAttribute('aria-label')
      const look = async (key: number, wanted: number): Promise<Sight> => {
        const sent = performance.now()
        window.fakeMidi.send(keyboard, [0x90, key, 64], sent)
        const done = performance.now()
        await frame()
        const marks = svg.querySelectorAll('.pencil > g').length
        const marked = changedAt - sent
        const next = await frame()
        window.fakeMidi.send(keyboard, [0x80, key, 0])
        return { heard: done - sent, marked, painted: next - sent, marks, wanted }
      }
      const sights: Promise<Sight>[] = []
      for (let played = 0; played < times; played++) {
        const before = strokes()
        const slipAt = (played + 1) % slipEach === 0 ? (played * 7) % keys.length : undefined
        let due = performance.now()
        for (const [place, key] of keys.entries()) {
          const wait = due - performance.now()
          if (wait > 0) await new Promise((resolve) => setTimeout(resolve, wait))
          due = Math.max(due, performance.now() - gap) + gap
          sights.push(
            slipAt === undefined ? look(key, place + 1) : look(place === slipAt ? key + 1 : key, 0),
          )
        }
        const late = performance.now() + patience
        while (strokes() === before && performance.now() < late) await frame()
      }
      return Promise.all(sights)
    },
    [
      played.keyboard,
      played.keys,
      played.gapMs,
      played.repetitions,
      played.slipEach ?? Infinity,
    ] as const,
  )

/** Bars 9 and 10 of the first piece, right hand: sixteen eighths. */
export const sixteenEighths = {
  place: '32-79_2/right',
  keys: 'C5 D5 E5 F5 G5 A5 B5 C6 D6 C6 B5 A5 G5 F5 E5 D5'
    .split(' ')
    .map((name) => parseKey(name) ?? 0),
}

const share = (times: readonly number[], at: number): number =>
  times.toSorted((a, b) => a - b)[Math.min(times.length - 1, Math.floor(at * times.length))] ?? NaN

/** How long each part of the way took: the median, what one of a hundred exceeds, the longest. */
export const describeSights = (sights: readonly Sight[]): readonly string[] =>
  (
    [
      ['in the judge, the coach and the page', 'heard'],
      ['key to mark in the document', 'marked'],
      ['key to the end of the frame with the mark', 'painted'],
    ] as const
  ).map(([what, part]) => {
    const times = sights.map((sight) => sight[part])
    const [median, most, worst] = [0.5, 0.99, 1].map((at) => share(times, at).toFixed(1))
    return `${what.padEnd(46)} median ${median}, p99 ${most}, worst ${worst} ms`
  })
