import { useEffect, useMemo, useState } from 'react'
import { correctByPlaying, type PlayedRecord } from '@/app/fromPlaying'
import type { ToldSpots } from '@/app/hardSpots'
import { listSpots, type ListedSpot } from '@/app/spotList'
import type { SpotWords } from '@/app/spotWords'
import type { Difficulty } from '@/difficulty/difficulty'
import type { HandChoice, Score } from '@/music/music'
import type { Tempo } from '@/music/units'
import type { SpotsText } from '@/text/spots'
import { useApp, useSelected } from './context'

interface SpotsProblem {
  readonly kind: keyof SpotsText['problems']
  readonly why: string
}

interface HardSpotsOfPiece {
  /** All that were found or named, in the order of rank; `undefined` until the first answer. */
  readonly spots: readonly ListedSpot[] | undefined
  /** How difficult the piece is as a whole; `undefined` until the first answer. */
  readonly whole: Difficulty | undefined
  /** The analysis is at work, perhaps anew. */
  readonly isLooking: boolean
  readonly problem: SpotsProblem | undefined
  /** What became of the person's words when this edition took the place of another. */
  readonly carried: ToldSpots | undefined
  /** As kept; `undefined` where they cannot be read, so that nothing is written over them. */
  readonly words: SpotWords | undefined
  readonly say: (words: SpotWords) => void
}

/** A goal tempo is typed digit by digit: the analysis waits until it stands, milliseconds. */
const typingPause = 350

/** The hard spots of a piece at a goal tempo, with the person's word on them. */
export const useHardSpots = (score: Score, goal: Tempo, hand: HandChoice): HardSpotsOfPiece => {
  const app = useApp()
  const [found, setFound] = useState<{
    readonly score: Score
    readonly goal: Tempo
    readonly difficulty: Difficulty
  }>()
  const [words, setWords] = useState<SpotWords>()
  const [missed, setMissed] = useState<SpotsProblem>()
  const [unkept, setUnkept] = useState<SpotsProblem>()
  const [record, setRecord] = useState<PlayedRecord>()
  const [carried, setCarried] = useState<ToldSpots>()
  const isFirst = found === undefined
  const reach = useSelected(app.settings, ({ span }) => span)
  useEffect(() => {
    let isOver = false
    const look = async (): Promise<void> => {
      try {
        const difficulty = await app.hardSpots.find(score, goal)
        if (isOver) return
        setFound({ score, goal, difficulty })
        setMissed(undefined)
      } catch (cause) {
        const why = cause instanceof Error ? cause.message : String(cause)
        if (!isOver) setMissed({ kind: 'notLooked', why })
      }
    }
    const timer = window.setTimeout(() => void look(), isFirst ? 0 : typingPause)
    return () => {
      isOver = true
      window.clearTimeout(timer)
    }
  }, [app, score, goal, reach, isFirst])
  useEffect(() => {
    let isOver = false
    void app.hardSpots.words(score.id).then((kept) => {
      if (isOver) return
      const told = app.hardSpots.takeCarried(score.id)
      if (told) setCarried(told)
      if (kept.ok) setWords(kept.value)
      else setUnkept({ kind: 'unread', why: kept.reason })
    })
    // What cannot be read corrects nothing; the review tells why.
    void app.records.piece(score.id).then((read) => {
      if (!isOver && read.ok) setRecord(read.value)
    })
    return () => {
      isOver = true
    }
  }, [app, score.id])
  const spots = useMemo(() => {
    if (!found) return undefined
    const { spots: all } = found.difficulty
    const corrected = record ? correctByPlaying(found.score, all, record) : all
    return listSpots(found.score, corrected, words ?? noWords, hand)
  }, [found, record, words, hand])
  const say = (next: SpotWords): void => {
    setWords(next)
    void app.hardSpots.save(score.id, next).then((saved) => {
      setUnkept(saved.ok ? undefined : { kind: 'unkept', why: saved.reason })
    })
  }
  const isLooking = missed === undefined && (found?.score !== score || found.goal !== goal)
  const whole = found?.difficulty
  return { spots, whole, isLooking, problem: missed ?? unkept, carried, words, say }
}

const noWords: SpotWords = { said: [], order: [] }
