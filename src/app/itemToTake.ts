import type { Chunk } from '@/music/chunk'
import type { Tempo } from '@/music/units'
import type { ItemOnDesk, PlaceInBuildUp, Practising } from './practising'

/** An exercise as it is to be taken up. */
export interface ExerciseToTake {
  readonly practising: Pick<Practising, 'next'> & Partial<Practising>
  readonly place: PlaceInBuildUp | undefined
  /** Where it may begin when there is no record of it. */
  readonly begin?: Tempo
  /** Where it begins today, whatever the record: no trial is needed. */
  readonly start?: Tempo
}

/**
 * What an item of today asks: a warm-up, a check and a run-through are played at its tempo; an exercise begins
 * where the item says, and leads to the next one of its place. Beyond that comes the next item.
 */
export const ofItem = (
  item: ItemOnDesk | undefined,
  chunk: Chunk,
  { place, begin, practising }: ExerciseToTake,
): ExerciseToTake => {
  if (!item) return { place, practising, ...(begin === undefined ? {} : { begin }) }
  const { kind, startTempo, goalTempo, chunk: first } = item.item
  const next = practising.next
  switch (kind) {
    case 'warmUp':
    case 'coldCheck':
    case 'runThrough':
      return {
        place: undefined,
        start: startTempo,
        practising: { next: undefined, reach: goalTempo, item },
      }
    case 'problemSpot':
    case 'newGroup':
    case 'join': {
      const isExercise = place !== undefined && next?.route.kind === 'practice'
      return {
        place,
        ...(begin === undefined ? {} : { begin }),
        ...(chunk.id === first ? { start: startTempo } : {}),
        practising: {
          ...practising,
          item,
          next: isExercise ? { ...next, route: { ...next.route, item: item.number } } : undefined,
        },
      }
    }
  }
}
