import type { XmlPart } from './musicXml'

/** Every resolution is a multiple of it. It holds the usual note values, triplets and quintuplets, and bars down to 1/128. */
const least = 480
/** Ticks a quarter: beyond this the divisions of a file make no sense together (SMF itself ends at 32,767). */
const greatest = 1_000_000
/** 2^7 · 3^3 · 5 · 7: where nothing holds all divisions, groups of up to 10 notes still stand exactly. */
const fallback = 120_960

/** Ticks a quarter in which all divisions of the file are exact, if they can be: 24 -> 480, 7 and 16 -> 3360. */
export const chooseResolution = (parts: readonly XmlPart[]): number => {
  const all = new Set<number>()
  for (const { measures } of parts)
    for (const { events } of measures)
      for (const event of events)
        if (event.kind === 'attributes' && event.divisions !== undefined) all.add(event.divisions)
  let resolution = least
  for (const divisions of all) {
    if (!Number.isInteger(divisions)) continue
    resolution = (resolution / divisor(resolution, divisions)) * divisions
    if (resolution > greatest) return fallback
  }
  return resolution
}

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b))
