import type { HandChoice, Note, Score } from '@/music/music'
import { ms, type Key, type Ms, type Tick } from '@/music/units'

/** Where notes were found: the starts of the first and the last onset that they belong to. */
export interface FoundNotes {
  readonly from: Tick
  readonly to: Tick
}

/** Fewer notes than this are too often met to name a place. */
export const leastNotes = 3
/** So many say enough; whoever goes on playing stays where they are. */
const mostNotes = 12

/**
 * Where in the piece these keys are struck one after the other by this hand: each onset gives one of
 * its keys or more, in any order, and none is left out between. In the order of the piece.
 * C4 E4 G4 finds the broken chord and the chord.
 */
export const findByNotes = (
  score: Score,
  hand: HandChoice,
  keys: readonly Key[],
): readonly FoundNotes[] => {
  if (keys.length < leastNotes) return []
  const onsets = onsetsOf(score.notes.filter((n) => hand === 'both' || n.hand === hand))
  return onsets.flatMap((onset, first) => {
    const last = lastOnset(onsets, first, keys)
    const to = last === undefined ? undefined : onsets[last]?.start
    return to === undefined ? [] : [{ from: onset.start, to }]
  })
}

/** What has been played on the way to a place, and where it led. */
export interface Search {
  readonly keys: readonly Key[]
  readonly lastAt: Ms
  readonly found: FoundNotes | undefined
  /** What an earlier phrase was and where it led: the same again leads to the next place. */
  readonly before: { readonly keys: readonly Key[]; readonly found: FoundNotes } | undefined
}

export const emptySearch: Search = {
  keys: [],
  lastAt: ms(-Infinity),
  found: undefined,
  before: undefined,
}

/** After so long without a key the next one begins a new phrase, milliseconds. */
const phraseGap = 1500

export interface Answer {
  readonly found: FoundNotes
  /** Which of how many places, from 1. */
  readonly place: number
  readonly places: number
}

/**
 * One key more. Three notes and more name a place, the first one in the piece; played again, the
 * next one, and after the last the first. Going back to the beginning without a pause is again, too.
 */
export const searchStep = (
  search: Search,
  { key, at }: { readonly key: Key; readonly at: Ms },
  score: Score,
  hand: HandChoice,
): readonly [Search, Answer | undefined] => {
  const goesOn = at - search.lastAt <= phraseGap
  const begun = goesOn ? search : newPhrase(search)
  const keys = [...begun.keys, key].slice(-mostNotes)
  const places = findByNotes(score, hand, keys)
  if (places.length === 0 && keys.length > leastNotes) {
    const again = { ...newPhrase(begun), keys: keys.slice(-leastNotes) }
    return answered(again, findByNotes(score, hand, again.keys), at)
  }
  return answered({ ...begun, keys }, places, at)
}

const newPhrase = ({ keys, found, before, lastAt }: Search): Search => ({
  keys: [],
  lastAt,
  found: undefined,
  before: found ? { keys, found } : before,
})

const answered = (
  search: Search,
  places: readonly FoundNotes[],
  at: Ms,
): readonly [Search, Answer | undefined] => {
  const { keys, before } = search
  const isAgain = before && keys.every((key, i) => before.keys[i] === key)
  const next = isAgain ? places.findIndex(({ from }) => from > before.found.from) : 0
  const index = Math.max(0, next)
  const found = places[index]
  return [
    { ...search, lastAt: at, found: found ?? search.found },
    found && { found, place: index + 1, places: places.length },
  ]
}

interface OnsetKeys {
  readonly start: Tick
  readonly keys: ReadonlySet<Key>
}

const onsetsOf = (notes: readonly Note[]): readonly OnsetKeys[] => {
  const onsets: { readonly start: Tick; readonly keys: Set<Key> }[] = []
  for (const { start, key, grace } of notes) {
    if (grace) continue
    const onset = onsets.at(-1)
    if (onset?.start === start) onset.keys.add(key)
    else onsets.push({ start, keys: new Set([key]) })
  }
  return onsets
}

/** The onset that the last key belongs to, when the keys begin at `first`; `undefined` when they do not. */
const lastOnset = (
  onsets: readonly OnsetKeys[],
  first: number,
  keys: readonly Key[],
): number | undefined => {
  /** Where one may stand after the keys so far: the onset, and which of its keys have been struck. */
  let ways: readonly { readonly onset: number; readonly struck: readonly Key[] }[] = [
    { onset: first - 1, struck: [] },
  ]
  for (const [i, key] of keys.entries()) {
    ways = ways.flatMap(({ onset, struck }) => [
      ...(i > 0 && onsets[onset]?.keys.has(key) && !struck.includes(key)
        ? [{ onset, struck: [...struck, key] }]
        : []),
      ...(onsets[onset + 1]?.keys.has(key) ? [{ onset: onset + 1, struck: [key] }] : []),
    ])
    if (ways.length === 0) return undefined
  }
  return Math.min(...ways.map(({ onset }) => onset))
}
