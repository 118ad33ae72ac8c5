import type { ExpectedNote } from '@/music/chunk'
import { ms } from '@/music/units'
import type { Flaw, Mark, PlayedNote } from './flaw'
import { groupByOnset, type Ground } from './ground'
import { onsetAt, type Step } from './reading'

/** A mark and the slot it stands in: 'k3' for the fourth strike, 'm' and the note's id for a lacking one. */
export interface NamedMark {
  readonly slot: string
  readonly mark: Mark
}

export interface Naming {
  readonly ground: Ground
  /** Number of the strike that the repetition began with. */
  readonly first: number
  /** In the order of time. */
  readonly steps: readonly Step[]
  /** Onsets outside are not named. */
  readonly from: number
  readonly to: number
  /** Whether what lacks of this onset is a flaw by now. */
  readonly isDue: (onset: number) => boolean
}

/** Names what each strike was and what lacks, onset by onset. */
export const nameMarks = (naming: Naming): NamedMark[] => {
  const byOnset = groupByOnset(naming.steps)
  const marks: NamedMark[] = []
  const returns = naming.steps.filter((s) => s.back)
  for (let onset = naming.from; onset <= naming.to; onset++) {
    marks.push(...nameOnset(naming, onset, byOnset.get(onset) ?? [], returns, byOnset))
  }
  return marks
}

export const playedNote = (step: Step, first: number): PlayedNote => ({
  index: step.strike.number - first,
  key: step.strike.key,
  at: step.strike.at,
  velocity: step.strike.velocity,
})

const nameOnset = (
  naming: Naming,
  onset: number,
  all: readonly Step[],
  returns: readonly Step[],
  byOnset: ReadonlyMap<number, readonly Step[]>,
): NamedMark[] => {
  const notes = onsetAt(naming.ground, onset).notes
  const left = returns.filter((r) => r.onset <= onset).at(-1)?.strike.number ?? -1
  const marks = all.flatMap((step) => nameStruck(naming, step, notes[step.note], left))
  const late = marks.filter((m) => m.mark.kind === 'order').slice(1)
  const struck = all.filter((s) => s.act === 'note' && s.strike.number >= left)
  const lacking = notes.filter((_, i) => !struck.some((s) => s.note === i))
  const foreign = all.filter((s) => s.act === 'foreign')
  const isGone = left >= 0 && all.every((s) => s.strike.number < left)
  const pairs = foreign.length === 0 || isGone ? [] : pairNearest(foreign, lacking)
  for (const step of foreign) {
    const expected = pairs.find((p) => p.step === step)?.note
    const played = playedNote(step, naming.first)
    const mark: Mark = expected
      ? { kind: 'wrong', onset, expected, played }
      : nameExtra(naming, step, byOnset)
    marks.push({ slot: `k${played.index}`, mark })
  }
  if (naming.isDue(onset)) {
    for (const expected of lacking) {
      if (pairs.some((p) => p.note === expected)) continue
      marks.push({ slot: `m${expected.ids[0]}`, mark: { kind: 'missing', onset, expected } })
    }
  }
  return late.length > 0 ? marks.map((m) => (late.includes(m) ? righted(m) : m)) : marks
}

/** A key that is written here: right, out of order, struck again, or the one that went back; none if left by going back. */
const nameStruck = (
  naming: Naming,
  step: Step,
  expected: ExpectedNote | undefined,
  left: number,
): NamedMark[] => {
  if (!expected) return []
  const played = playedNote(step, naming.first)
  const slot = `k${played.index}`
  const { onset } = step
  if (step.act === 'echo') return [{ slot, mark: { kind: 'repeated', onset, expected, played } }]
  const gone: NamedMark[] = step.back
    ? [{ slot: `r${played.index}`, mark: goneBack(naming, step, expected) }]
    : []
  if (step.act !== 'note' || step.strike.number < left) return gone
  const kind = step.late ? 'order' : 'right'
  return [...gone, { slot, mark: { kind, onset, expected, played } }]
}

/** Of an onset that came too late only the first key is blamed: it is one slip. */
const righted = ({ slot, mark }: NamedMark): NamedMark =>
  mark.kind === 'order' && mark.expected && mark.played
    ? {
        slot,
        mark: { kind: 'right', onset: mark.onset, expected: mark.expected, played: mark.played },
      }
    : { slot, mark }

/** A foreign key stands for the lacking note nearest to it; an octave is as near as a neighbour. */
const pairNearest = (
  foreign: readonly Step[],
  lacking: readonly ExpectedNote[],
): readonly { readonly step: Step; readonly note: ExpectedNote }[] => {
  const all = foreign.flatMap((step) =>
    lacking.map((note) => ({ step, note, far: distance(step.strike.key, note.key) })),
  )
  const pairs: { step: Step; note: ExpectedNote }[] = []
  for (const pair of all.toSorted((a, b) => a.far - b.far)) {
    if (!pairs.some((p) => p.step === pair.step || p.note === pair.note)) pairs.push(pair)
  }
  return pairs
}

const distance = (a: number, b: number): number => {
  const d = Math.abs(a - b)
  return d === 12 ? 1.5 : d
}

/** An extra key that sounds in this onset or the one before is a repeated one. */
const nameExtra = (
  { ground, first }: Naming,
  step: Step,
  byOnset: ReadonlyMap<number, readonly Step[]>,
): Flaw => {
  const near = [step.onset, step.onset - 1].flatMap((o) => byOnset.get(o) ?? [])
  const twin = near.find(
    (s) =>
      s.act === 'note' && s.strike.number < step.strike.number && s.strike.key === step.strike.key,
  )
  const expected = twin && ground.onsets[twin.onset]?.notes[twin.note]
  return {
    kind: twin ? 'repeated' : 'extra',
    onset: step.onset,
    played: playedNote(step, first),
    ...(expected ? { expected } : {}),
  }
}

/** One flaw for going back, however much is played again. */
const goneBack = ({ steps, first }: Naming, step: Step, expected: ExpectedNote): Flaw => {
  const before = steps.filter((s) => s.strike.number < step.strike.number)
  const left = before.filter((s) => s.act === 'note' && s.onset >= step.onset)
  const last = before.at(-1)
  return {
    kind: 'restart',
    onset: step.onset,
    expected,
    played: playedNote(step, first),
    ...(left.length > 0 ? { again: left.map((s) => playedNote(s, first)) } : {}),
    ...(last ? { ms: ms(step.strike.at - last.strike.at) } : {}),
  }
}
