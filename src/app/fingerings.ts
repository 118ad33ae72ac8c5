import { createStore, type StoreApi } from 'zustand/vanilla'
import { fingeringsOf, type FingeringVersion, type PieceFingerings } from '@/journal/fingerings'
import type { EventId } from '@/journal/ids'
import type { JournalEvent } from '@/journal/journal'
import { mergeJournals } from '@/journal/merge'
import { fingeringOrigins, type FingeringOrigin } from '@/journal/words'
import { fingersOf, formatFingers, withFingers, type Fingers } from '@/music/fingers'
import type { Finger, Score } from '@/music/music'
import type { NoteId, PieceId } from '@/music/units'
import type { CorrectedPiece } from './handCorrections'
import type { Ports } from './ports'
import type { Session } from './session'

/** A piece whose notes bear the digits that the person has chosen. */
export interface FingeredPiece extends CorrectedPiece {
  /** What the file says, whatever is shown. */
  readonly fileFingers: Fingers
  /** Of a better edition that has just taken the place of a piece: what became of that one's digits. */
  readonly carriedFingers?: CarriedFingers
}

/** A version of the fingering that is to be begun. */
export interface NewFingering {
  readonly name: string
  readonly origin: FingeringOrigin
  readonly remark?: string
  readonly fingers: Fingers
}

export type FingeringWords = Pick<FingeringVersion, 'name' | 'origin' | 'remark'>

export interface FingeringsState {
  readonly pieces: ReadonlyMap<PieceId, PieceFingerings>
  /** Why they cannot be read, in a sentence. */
  readonly problem?: string
}

/** What becomes of the person's digits, of all versions, when a better edition takes the place of a piece. */
export interface CarriedFingers {
  readonly carried: number
  /** How many are dropped, since their notes are not in it. */
  readonly dropped: number
}

/** The person's own digits, in versions; every change is an event of the journal, stored at once. */
export interface Fingerings {
  readonly store: StoreApi<FingeringsState>
  /** Reads what is kept, and puts the chosen digits on the notes. */
  readonly apply: (piece: CorrectedPiece) => Promise<FingeredPiece>
  /** Writes digits into the chosen version; an empty list takes the digit away. Where the file's are shown, a version is begun. */
  readonly write: (piece: FingeredPiece, fingers: Fingers) => Promise<void>
  /** Begins a version, which is chosen. */
  readonly begin: (piece: PieceId, version: NewFingering) => Promise<void>
  readonly describe: (piece: PieceId, id: EventId, words: FingeringWords) => Promise<void>
  readonly erase: (piece: PieceId, id: EventId) => Promise<void>
  /** `undefined`: the digits of the file. */
  readonly choose: (piece: PieceId, id: EventId | undefined) => Promise<void>
  readonly propose: Ports['proposeFingering']
  readonly compare: Ports['compareFingerings']
  /** To the edition that takes the place of a piece: digits of notes that are in it; what became of them is told when it is opened next. */
  readonly carry: (old: Score, better: Score) => Promise<void>
}

export const originChoices = fingeringOrigins

export const none: PieceFingerings = { versions: [] }

export const createFingerings = (
  ports: Pick<Ports, 'proposeFingering' | 'compareFingerings'> & {
    readonly storage: Pick<Ports['storage'], 'written'>
  },
  session: Pick<Session, 'wrote'>,
  /** Called with each piece whose digits have changed. */
  onChange: (piece: PieceId) => void,
): Fingerings => {
  const store = createStore<FingeringsState>(() => ({ pieces: new Map() }))
  const toTell = new Map<PieceId, CarriedFingers>()
  let known: readonly JournalEvent[] = []
  const of = (piece: PieceId): PieceFingerings => store.getState().pieces.get(piece) ?? none

  const learn = (events: readonly JournalEvent[]): void => {
    known = mergeJournals(known, events)
    store.setState(() => ({ pieces: fingeringsOf(known) }), true)
  }
  const load = async (): Promise<void> => {
    const read = await ports.storage.written()
    if (read.ok) learn(read.value)
    else store.setState({ problem: read.reason })
  }
  const record: Session['wrote'] = async (written) => {
    const event = await session.wrote(written)
    learn([event])
    onChange(event.piece)
    return event
  }
  const begin = async (
    piece: PieceId,
    { name, origin, remark, fingers }: NewFingering,
  ): Promise<EventId> => {
    const { id } = await record({
      kind: 'fingeringWritten',
      piece,
      name,
      origin,
      ...(remark ? { remark } : {}),
      fingers: asText(fingers),
    })
    return id
  }
  const choose = async (piece: PieceId, id: EventId | undefined): Promise<void> => {
    await record({
      kind: 'fingeringChosen',
      piece,
      ...(id === undefined ? {} : { fingering: id }),
    })
  }

  const write = async ({ score, fileFingers }: FingeredPiece, fingers: Fingers): Promise<void> => {
    const { versions, chosen } = of(score.id)
    if (chosen !== undefined) {
      const changes = { kind: 'fingeringWritten', piece: score.id, fingering: chosen } as const
      await record({ ...changes, fingers: asText(fingers) })
      return
    }
    // A first visit need not load them.
    const { fingeringText } = await import('@/text/fingering')
    const own: NewFingering = {
      name: freeName(versions, fingeringText.names.mine),
      origin: 'mine',
      fingers: new Map([...fileFingers, ...fingers]),
    }
    await choose(score.id, await begin(score.id, own))
  }
  /** One after the other: of two digits typed quickly only the first begins a version. */
  let writing = Promise.resolve()

  return {
    store,
    apply: async (piece) => {
      await load()
      const { id } = piece.score
      const carriedFingers = toTell.get(id)
      toTell.delete(id)
      return { ...fingered(piece, of(id)), ...(carriedFingers ? { carriedFingers } : {}) }
    },
    write: (piece, fingers) => (writing = writing.then(() => write(piece, fingers))),
    begin: async (piece, version) => choose(piece, await begin(piece, version)),
    describe: async (piece, fingering, { name, origin, remark }) => {
      await record({ kind: 'fingeringWritten', piece, fingering, name, origin, remark })
    },
    erase: async (piece, fingering) => {
      await record({ kind: 'fingeringErased', piece, fingering })
    },
    choose,
    propose: ports.proposeFingering,
    compare: ports.compareFingerings,
    carry: async (old, better) => {
      if (old.id === better.id) return
      await load()
      const { versions, chosen } = of(old.id)
      let [carried, all] = [0, 0]
      for (const version of versions) {
        const fingers = agreeing(version.fingers, better)
        carried += fingers.size
        all += version.fingers.size
        if (fingers.size === 0 || hasAlready(of(better.id), version, fingers)) continue
        const id = await begin(better.id, { ...version, fingers })
        if (version.id === chosen) await choose(better.id, id)
      }
      if (all > 0) toTell.set(better.id, { carried, dropped: all - carried })
    },
  }
}

/** The piece with the digits of the version that is chosen, else with those of the file. */
export const fingered = (
  piece: CorrectedPiece & Partial<FingeredPiece>,
  { versions, chosen }: PieceFingerings,
): FingeredPiece => {
  const fileFingers = piece.fileFingers ?? fingersOf(piece.score)
  const shown = versions.find(({ id }) => id === chosen)?.fingers ?? fileFingers
  return { ...piece, score: withFingers(piece.score, shown), fileFingers }
}

/** 'My fingering', 'My fingering 2', ... */
export const freeName = (
  versions: readonly Pick<FingeringVersion, 'name'>[],
  name: string,
): string => {
  let free = name
  for (let n = 2; versions.some((version) => version.name === free); n++) free = `${name} ${n}`
  return free
}

const asText = (fingers: Fingers): Readonly<Record<string, string>> =>
  Object.fromEntries([...fingers].map(([note, own]) => [note, formatFingers(own)]))

/** A note's name says its key and its place: what bears the same name is the same note. */
const agreeing = (fingers: Fingers, { notes }: Score): Fingers =>
  new Map(
    notes.flatMap(({ id }): readonly (readonly [NoteId, readonly Finger[]])[] => {
      const own = fingers.get(id)
      return own ? [[id, own]] : []
    }),
  )

/** So that an edition that comes and goes does not leave the same version twice. */
const hasAlready = (
  { versions }: PieceFingerings,
  { name, origin, remark }: FingeringVersion,
  fingers: Fingers,
): boolean =>
  versions.some(
    (other) =>
      other.name === name &&
      other.origin === origin &&
      other.remark === remark &&
      JSON.stringify(asText(other.fingers)) === JSON.stringify(asText(fingers)),
  )
