import { fingerHand, type HandFingering } from '@/fingering/fingering'
import { handSpans, type HandSpan } from '@/fingering/spans'
import type { Hand, Note, Score } from '@/music/music'
import { formatKey } from '@/music/pitch'
import { ok, type Result } from '@/music/result'
import { tellDifference, tellUnreachable } from '@/text/fingering'
import { loadPiece } from './files'
import { checkNames, choiceOf, wordOf, type Options } from './options'
import { choosePassage } from './passage'
import { firstDownbeat } from './read'
import type { Answer } from './verb'

const known = ['piece', 'hand', 'from', 'to', 'span']
const playing = ['right', 'left'] as const satisfies readonly Hand[]

/** `finger --piece FILE --hand H ...`: a fingering for one hand, and in words some others. */
export const finger = (options: Options): Result<Answer, string> => {
  const names = checkNames(options, known)
  const path = names.ok ? wordOf(options, 'piece') : names
  const isGiven = path.ok ? wordOf(options, 'hand') : path
  const hand = isGiven.ok ? choiceOf(options, 'hand', playing) : isGiven
  if (!hand.ok) return hand
  const span = spanOf(options)
  if (!span.ok) return span
  const piece = path.ok ? loadPiece(path.value) : path
  if (!piece.ok) return piece
  const { score } = piece.value
  const passage = choosePassage(score, options)
  if (!passage.ok) return passage
  const from = passage.value.start
  const to = from + (passage.value.onsets.at(-1)?.start ?? 0)
  const notes = score.notes.filter((note) => note.start >= from && note.start <= to)
  const found = fingerHand(notes, {
    hand: hand.value,
    ticksPerQuarter: score.ticksPerQuarter,
    span: span.value,
  })
  return ok({ json: foundJson(found, score), text: () => describe(found, score) })
}

/** The person's span, medium where none is given. */
export const spanOf = (options: Options): Result<HandSpan, string> =>
  options.has('span') ? choiceOf(options, 'span', handSpans) : ok('medium')

interface Fingered {
  readonly note: Note
  readonly finger: number
}

const fingeredNotes = ({ best }: HandFingering, score: Score): readonly Fingered[] => {
  const notes = new Map(score.notes.map((note) => [note.id, note]))
  return (best?.notes ?? []).flatMap(({ id, finger: digit }) => {
    const note = notes.get(id)
    return note ? [{ note, finger: digit }] : []
  })
}

/** `beat` counts as `read` does. */
const foundJson = (found: HandFingering, score: Score): object => ({
  notes: fingeredNotes(found, score).map(({ note, finger: digit }) => ({
    key: note.key,
    beat: (note.start - firstDownbeat(score)) / score.ticksPerQuarter,
    finger: digit,
  })),
  cost: round(found.best?.cost ?? 0),
  alternatives: found.alternatives.map(({ notes, cost, difference }) => ({
    fingers: notes.map(({ finger: digit }) => digit),
    cost: round(cost),
    difference: tellDifference(difference),
  })),
  unreachable: found.unreachable.map(({ start, why }) => ({
    beat: (start - firstDownbeat(score)) / score.ticksPerQuarter,
    advice: tellUnreachable(why, formatKey),
  })),
})

/** To a thousandth; what is beyond is noise of the sums. */
const round = (n: number): number => Math.round(n * 1000) / 1000

const describe = (found: HandFingering, score: Score): string => {
  const flats = (score.keys[0]?.fifths ?? 0) < 0 ? 'flats' : 'sharps'
  const barOf = (start: number): number | undefined =>
    score.bars.findLast((bar) => bar.start <= start)?.number
  const bars = new Map<number | undefined, Fingered[]>()
  for (const each of fingeredNotes(found, score)) {
    const bar = score.bars[each.note.barIndex]?.number
    bars.set(bar, [...(bars.get(bar) ?? []), each])
  }
  const lines = [...bars].map(([bar, all]) => `bar ${bar}: ${describeBar(all, flats)}`)
  const others = found.alternatives.map(
    ({ cost, difference }) => `another costs ${round(cost)}: ${tellDifference(difference)}`,
  )
  const beyond = found.unreachable.map(
    ({ start, why }) => `bar ${barOf(start)}: ${tellUnreachable(why, formatKey)}`,
  )
  return [...lines, `cost ${round(found.best?.cost ?? 0)}`, ...others, ...beyond].join('\n')
}

/** 'C4 1, E4+G4 2+4': notes that are struck together by their sign. */
const describeBar = (all: readonly Fingered[], prefer: 'sharps' | 'flats'): string => {
  const onsets: Fingered[][] = []
  for (const each of all.toSorted((a, b) => a.note.start - b.note.start)) {
    const last = onsets.at(-1)
    const isTogether = last?.[0]?.note.start === each.note.start && !each.note.grace
    if (last && isTogether && !last[0]?.note.grace) last.push(each)
    else onsets.push([each])
  }
  return onsets
    .map((onset) => {
      const sorted = onset.toSorted((a, b) => a.note.key - b.note.key)
      const names = sorted.map(({ note }) => formatKey(note.key, prefer)).join('+')
      return `${names} ${sorted.map(({ finger: digit }) => digit).join('+')}`
    })
    .join(', ')
}
