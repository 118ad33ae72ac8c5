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
  const { ground, first } = naming
  const abandoned = (step: Step): boolean =>
    returns.some((r) => r.strike.number > step.strike.number && r.onset <= onset)
  const notes = onsetAt(ground, onset).notes
  const marks: NamedMark[] = []
  const struck = new Set<number>()
  const foreign: Step[] = []
  let late: Step | undefined
  for (const step of all) {
    const played = playedNote(step, first)
    const slot = `k${played.index}`
    const expected = step.note < 0 ? undefined : notes[step.note]
    if (step.back && expected) {
      marks.push({ slot: `r${played.index}`, mark: goneBack(naming, step, expected) })
    }
    if (step.act === 'foreign') foreign.push(step)
    else if (step.act === 'echo') {
      const mark: Flaw = { kind: 'repeated', onset, played, ...(expected ? { expected } : {}) }
      marks.push({ slot, mark })
    } else if (step.act === 'note' && expected && !abandoned(step)) {
      struck.add(step.note)
      const isFirstLate = step.late && !late
      if (isFirstLate) late = step
      marks.push({ slot, mark: { kind: isFirstLate ? 'order' : 'right', onset, expected, played } })
    }
  }
  const wasLeft = returns.some((r) => r.onset <= onset) && !all.some((s) => !abandoned(s))
  const lacking = notes.filter((_, i) => !struck.has(i))
  const pairs = wasLeft ? [] : pairNearest(foreign, lacking)
  for (const step of foreign) {
    const expected = pairs.find((p) => p.step === step)?.note
    marks.push({
      slot: `k${step.strike.number - first}`,
      mark: expected
        ? { kind: 'wrong', onset, expected, played: playedNote(step, first) }
        : nameExtra(naming, step, byOnset),
    })
  }
  if (naming.isDue(onset)) {
    for (const expected of lacking) {
      if (pairs.some((p) => p.note === expected)) continue
      marks.push({ slot: `m${expected.ids[0]}`, mark: { kind: 'missing', onset, expected } })
    }
  }
  return marks
}

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
