import { daysBetween } from '@/journal/day'
import { groupBy } from '@/journal/groupBy'
import type { ChunkDay, PieceDay } from '@/journal/sums'
import type { PieceDecision } from '@/journal/words'
import { failed, ok, type Result } from '@/music/result'
import { tempoAt } from '@/music/tempoMap'
import { tick, type PieceId, type Tempo } from '@/music/units'
import { planDay } from '@/plan/day'
import { layOutRecord } from '@/plan/fromRecord'
import { honestWord } from '@/plan/honest'
import type { PieceLayout } from '@/plan/layOut'
import { paceFrom, planDefaults } from '@/plan/pace'
import { isSettled, planPiece } from '@/plan/plan'
import { isBelowFloor, recordFrom } from '@/plan/record'
import { spanOf } from '@/plan/span'
import { readChunkDays } from './chunkRecord'
import { planText } from '@/text/plan'
import type { CorrectedPiece } from './handCorrections'
import { orderByPlaying } from './orderByPlaying'
import type { Plans, PlansHouse, PractisedPiece } from './plans'

/** A piece with its places and its record. */
interface LaidOut {
  readonly piece: CorrectedPiece
  readonly layout: PieceLayout
  readonly rows: readonly ChunkDay[]
}

/** What was practised within four weeks is what somebody is at. */
const latelyDays = 28
/** The pieces practised most tell the pace, of however many there are. */
const piecesForPace = 3

export const createPlanning = (house: PlansHouse): Omit<Plans, 'today'> => {
  const { ports, library, hands } = house
  const { storage } = ports
  const layOut = keepLayouts(house)
  const today = () => storage.dayOf(ports.wallClock())

  const rowsOf = (piece: CorrectedPiece): Promise<Result<readonly ChunkDay[], string>> =>
    readChunkDays(storage, piece.score.id, piece.carried ?? [])

  const open = async (id: PieceId): Promise<Result<LaidOut, string>> => {
    const piece = await hands.open(id)
    if (!piece) return failed(planText.today.notHere)
    const rows = await rowsOf(piece)
    if (!rows.ok) return rows
    const layout = await layOut(piece, goalOf(piece, rows.value))
    const ordered = orderByPlaying(piece.score, layout, rows.value)
    return ok({ piece, layout: ordered, rows: rows.value })
  }
  /** One that cannot be read does not keep the others away; where it is the only one, it is told. */
  const openAll = async (
    ids: readonly PieceId[],
    progress: (done: number) => void = () => undefined,
  ): Promise<Result<readonly LaidOut[], string>> => {
    const all: LaidOut[] = []
    let problem: Result<LaidOut, string> | undefined
    for (const [done, id] of ids.entries()) {
      progress(done)
      const each = await open(id)
      if (each.ok) all.push(each.value)
      else problem = each
    }
    return problem && !problem.ok && all.length === 0 ? problem : ok(all)
  }
  const goalOf = ({ score, suggestion }: CorrectedPiece, rows: readonly ChunkDay[]): Tempo =>
    house.goal(score.id) ??
    rows.findLast(({ begun }) => begun)?.begun?.goalTempo ??
    suggestion?.goalTempo ??
    tempoAt(score.tempos, tick(0))

  const decided = async () => {
    await house.notebook.load()
    return house.notebook.store.getState().decisions
  }

  const practised: Plans['practised'] = async () => {
    const [sums, pieces] = await Promise.all([storage.sums(), storage.pieces()])
    if (!sums.ok) return sums
    if (!pieces.ok) return pieces
    const carried = new Map(
      pieces.value.flatMap(({ id, carried: from = [] }) => from.map((each) => [pieceOf(each), id])),
    )
    const decisions = await decided()
    const rows = groupBy(sums.value.pieces, ({ piece }) => carried.get(piece) ?? piece)
    const found = library.store.getState().listed.flatMap(({ id, title }): PractisedPiece[] => {
      const played = (rows.get(id) ?? []).filter(({ ms }) => ms > 0)
      const last = played.at(-1)
      const decision = decisions.get(id)
      const word = decision === undefined ? {} : { decision }
      return last ? [{ id, title, lastDay: last.day, minutes: minutesLately(played), ...word }] : []
    })
    return ok(found.toSorted((a, b) => b.minutes - a.minutes || (a.lastDay < b.lastDay ? 1 : -1)))
  }
  const minutesLately = (rows: readonly PieceDay[]): number =>
    rows
      .filter(({ day }) => daysBetween(day, today()) <= latelyDays)
      .reduce((sum, { ms }) => sum + ms, 0) / 60_000

  return {
    practised,
    piece: async (id) => {
      const others = await practised()
      if (!others.ok) return others
      const mine = await open(id)
      if (!mine.ok) return mine
      const ids = others.value.map((each) => each.id).filter((each) => each !== id)
      const more = await openAll(ids.slice(0, piecesForPace - 1))
      const all = [mine.value, ...(more.ok ? more.value : [])]
      const record = recordFrom(all.flatMap(({ rows }) => rows))
      const pace = paceFrom(
        record,
        all.map(({ layout }) => layout),
      )
      const plan = planPiece(mine.value.layout, record, pace, (await decided()).get(id))
      return ok({
        piece: mine.value.piece,
        plan,
        exercises: pace.exercises,
        defaults: Object.values(planDefaults),
        span: (minutesPerDay, daysPerWeek) => {
          const week = daysPerWeek === undefined ? {} : { daysPerWeek }
          return spanOf(plan, record, pace, today(), { minutesPerDay, ...week })
        },
      })
    },
    honestly: async ({ plan }, progress) => {
      const ids = library.store.getState().listed.map(({ id }) => id)
      const all = await openAll(ids, (done) => progress(done, ids.length))
      if (!all.ok) return all
      const record = recordFrom(all.value.flatMap(({ rows }) => rows))
      const layouts = all.value.map(({ layout }) => layout)
      const pace = paceFrom(record, layouts)
      return ok(
        honestWord(
          plan,
          layouts.map((layout) => planPiece(layout, record, pace)),
        ),
      )
    },
    day: async ({ minutes, seed, pieces: chosen }) => {
      const known = await practised()
      if (!known.ok) return known
      const all = await openAll(chosen)
      if (!all.ok) return all
      const decisions = await decided()
      const others: ChunkDay[] = []
      for (const { id } of known.value.filter((each) => !chosen.includes(each.id))) {
        const piece = await hands.open(id)
        const rows = piece && (await rowsOf(piece))
        if (rows?.ok) others.push(...rows.value)
      }
      const layouts = all.value.map(({ layout }) => layout)
      const record = recordFrom(all.value.flatMap(({ rows }) => rows))
      const pace = paceFrom(record, layouts)
      // What is chosen for today is not laid aside today.
      const plans = layouts.map((layout) =>
        planPiece(layout, record, pace, atWork(decisions.get(layout.piece))),
      )
      const rest = checksOnly(others, known.value)
      const plan = planDay({
        day: today(),
        minutes,
        seed,
        pieces: [...plans, ...rest],
        lowered: isBelowFloor(record),
      })
      return ok({
        plan,
        goals: new Map([...plans, ...rest].map((each) => [each.piece, each.goalTempo])),
        finished: plans.length > 0 && plans.every(({ finished }) => finished),
      })
    },
  }
}

const atWork = (decision: PieceDecision | undefined): PieceDecision | undefined =>
  decision === 'laidAside' ? 'takenUp' : decision

/** Of a piece that is not worked at today only what is to be met cold, which the record tells without the notes. */
const checksOnly = (rows: readonly ChunkDay[], known: readonly PractisedPiece[]) => {
  const record = recordFrom(rows)
  return layOutRecord(record)
    .map((layout) => {
      const piece = known.find(({ id }) => id === layout.piece)
      const titled = { ...layout, title: piece?.title ?? layout.title }
      const plan = planPiece(titled, record, paceFrom(record, []), piece?.decision)
      return { ...plan, places: plan.places.filter(isSettled) }
    })
    .filter(({ places }) => places.length > 0)
}

/** A chunk's name begins with that of its piece. */
const pieceOf = ({ from }: { readonly from: string }): string => from.slice(0, from.indexOf(':'))

/** Lays each piece out once, and anew where its hands, its goal tempo, the reach or its hard spots are others; one after the other. */
const keepLayouts = ({ ports, hardSpots, reach }: PlansHouse) => {
  const known = new Map<
    PieceId,
    { readonly name: string; readonly score: object; readonly layout: PieceLayout }
  >()
  let last: Promise<unknown> = Promise.resolve()
  return async ({ score }: CorrectedPiece, goal: Tempo): Promise<PieceLayout> => {
    const stored = await hardSpots.words(score.id)
    const words = stored.ok ? stored.value : { said: [], order: [] }
    const span = reach()
    const name = `${goal} ${span} ${JSON.stringify(words)}`
    const one = known.get(score.id)
    if (one?.name === name && one.score === score) return one.layout
    const laying = last.then(() => ports.layOut(score, goal, words, span))
    last = laying.catch(() => undefined)
    const layout = await laying
    known.set(score.id, { name, score, layout })
    return layout
  }
}
