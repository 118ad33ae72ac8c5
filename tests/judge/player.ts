import fc from 'fast-check'
import type { Chunk, Onset } from '@/music/chunk'
import type { KeyEvent, Take } from '@/music/keyEvent'
import { key, ms, noteId, tick, type Key } from '@/music/units'
import { chunkOf } from './notation'

/** A stream of numbers in [0, 1), the same for the same seed: Mulberry32 (Tommy Ettinger, public domain). */
export const createDice = (seed: number): (() => number) => {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

/** A strike of the player, and which written note it was meant for: onset and index. */
export interface Struck {
  readonly key: Key
  readonly at: number
  readonly length: number
  readonly velocity: number
  readonly onset: number
  readonly note: number
}

/** How a person plays: standard deviations and ranges are those of facts about amateurs, not of one. */
export interface Manner {
  /** A quarter in milliseconds. */
  readonly quarter: number
  /** Standard deviation of the gaps, as a share. */
  readonly gapSd: number
  /** Standard deviation inside a chord, in milliseconds. */
  readonly chordSd: number
  /** The part of its written length that a key is held; over 1 it overlaps the next. */
  readonly held: number
}

export const evenManner: Manner = { quarter: 600, gapSd: 0.05, chordSd: 15, held: 0.9 }

/** Roughly normal, mean 0, within 2.5 standard deviations. */
const normal = (dice: () => number, sd: number): number => {
  let sum = 0
  for (let i = 0; i < 12; i++) sum += dice()
  return sd * Math.max(-2.5, Math.min(2.5, sum - 6))
}

/** Plays the chunk once, cleanly, from 1 s on. */
export const play = (chunk: Chunk, manner: Manner, dice: () => number): Struck[] => {
  const struck: Struck[] = []
  let at = 1000
  for (const [i, onset] of chunk.onsets.entries()) {
    const before = chunk.onsets[i - 1]
    const gap = before ? onset.start - before.start : 0
    at += (gap / chunk.ticksPerQuarter) * manner.quarter * (1 + normal(dice, manner.gapSd))
    for (const [n, note] of onset.notes.entries()) {
      const spread = onset.notes.length > 1 ? normal(dice, manner.chordSd) : 0
      const length = (note.length / chunk.ticksPerQuarter) * manner.quarter * manner.held
      struck.push({
        key: note.key,
        at: at + spread,
        length: Math.max(30, length),
        velocity: Math.round(Math.max(20, 64 + normal(dice, 10))),
        onset: i,
        note: n,
      })
    }
  }
  return struck.toSorted((a, b) => a.at - b.at)
}

/** Key events of the strikes; a key still held is let go 10 ms before it is struck again. */
export const takeOf = (struck: readonly Struck[]): Take => {
  const sorted = struck.toSorted((a, b) => a.at - b.at)
  const events = sorted.flatMap((s, i): KeyEvent[] => {
    const again = sorted.slice(i + 1).find((t) => t.key === s.key)
    const until = Math.min(s.at + s.length, again ? again.at - 10 : Infinity)
    return [
      { kind: 'down', key: s.key, velocity: s.velocity, at: ms(s.at) },
      { kind: 'up', key: s.key, at: ms(Math.max(s.at + 1, until)) },
    ]
  })
  return { events: events.toSorted((a, b) => a.at - b.at) }
}

export const slips = ['wrong', 'octave', 'missing', 'extra', 'repeated', 'exchanged'] as const
export type Slip = (typeof slips)[number]

/** The strikes with one slip, and the strike or written note that it was; undefined where there is no room for it. */
export const slipIn = (
  chunk: Chunk,
  struck: readonly Struck[],
  slip: Slip,
  dice: () => number,
): { readonly struck: readonly Struck[]; readonly victim: Struck } | undefined => {
  const pick = <T>(items: readonly T[]): T | undefined => items[Math.floor(dice() * items.length)]
  const victim = pick(struck)
  if (!victim) return undefined
  const others = struck.filter((s) => s !== victim)
  const near = new Set(
    chunk.onsets
      .slice(Math.max(0, victim.onset - 1), victim.onset + 2)
      .flatMap((o) => o.notes.map((n) => n.key)),
  )
  const free = (distances: readonly number[]): Key | undefined =>
    pick(distances.map((d) => key(victim.key + d)).filter((k) => !near.has(k)))
  const replace = (k: Key | undefined) =>
    k === undefined ? undefined : { struck: [...others, { ...victim, key: k }], victim }
  switch (slip) {
    case 'wrong':
      return replace(free([1, -1, 2, -2]))
    case 'octave':
      return replace(free([12, -12]))
    case 'missing':
      return others.length > 0 ? { struck: others, victim } : undefined
    case 'extra': {
      const k = free([3, -3, 4, -4, 5, -5])
      const extra = k && { ...victim, key: k, at: victim.at + 20 + 60 * dice() }
      return extra ? { struck: [...struck, extra], victim: extra } : undefined
    }
    case 'repeated': {
      // Where the next onset has the key too, no one can say which strike was too many.
      if (chunk.onsets[victim.onset + 1]?.notes.some((n) => n.key === victim.key)) return undefined
      const delay = 180 + 200 * dice()
      const later = struck.map((s) => (s.onset > victim.onset ? { ...s, at: s.at + delay } : s))
      return { struck: [...later, { ...victim, at: victim.at + delay }], victim }
    }
    case 'exchanged': {
      const lone = (i: number): Struck | undefined => {
        const here = struck.filter((s) => s.onset === i)
        return here.length === 1 ? here[0] : undefined
      }
      const [a, b] = [lone(victim.onset), lone(victim.onset + 1)]
      if (!a || !b || a.key === b.key || b.at - a.at < 120) return undefined
      const rest = struck.filter((s) => s !== a && s !== b)
      return { struck: [...rest, { ...a, at: b.at }, { ...b, at: a.at }], victim: a }
    }
  }
}

/** Any chunk of 1 to 10 onsets, single notes and chords of up to four, on three octaves, of even and uneven values. */
export const anyChunk = (least = 1): fc.Arbitrary<Chunk> =>
  fc
    .array(
      fc.record({
        keys: fc.uniqueArray(fc.integer({ min: 48, max: 84 }), { minLength: 1, maxLength: 4 }),
        length: fc.constantFrom(240, 240, 480, 480, 720, 960),
        lone: fc.boolean(),
      }),
      { minLength: least, maxLength: 10 },
    )
    .map((plan) => {
      let start = 0
      const onsets = plan.map(({ keys, length, lone }): Onset => {
        const sorted = keys.slice(0, lone ? 1 : 4).toSorted((a, b) => a - b)
        const notes = sorted.map((k) => ({
          ids: [noteId(`n${start}k${k}`)] as const,
          key: key(k),
          start: tick(start),
          length: tick(length),
          hand: k < 60 ? ('left' as const) : ('right' as const),
        }))
        const [first, ...rest] = notes
        if (!first) throw new Error('an onset has a note')
        const onset = {
          start: tick(start),
          notes: [first, ...rest] as const,
          auxiliaries: [],
          rolled: false,
        }
        start += length
        return onset
      })
      return chunkOf(onsets, start)
    })

export const anySeed = fc.integer({ min: 0, max: 2 ** 31 })
