/** The sample pieces, written as MusicXML by rule: read by us they are the same pieces, and verovio hears the same. */
import { readFileSync, readdirSync } from 'node:fs'
import { beforeAll, describe, expect, test } from 'vitest'
import type { VerovioToolkit } from 'verovio/esm'
import { openEngraverHere } from '../support/toolkit'
import { hands, type Bar, type Hand, type Note, type Score } from '@/music/music'
import { readPiece } from '@/score/readPiece'
import { attributes, backup, piano, readText, voice } from './musicXmlText'
import { byUs, byVerovio } from './timeMap'

const folder = new URL('../../sample-midi/', import.meta.url)
const samples = readdirSync(folder).filter((name) => name.endsWith('.mid'))

const readSample = (name: string): Score => {
  const piece = readPiece(new Uint8Array(readFileSync(new URL(name, folder))), name)
  if (!piece.ok) throw new Error(piece.reason.kind)
  return piece.value.score
}

const names = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B']
const nameOf = (key: number): string => `${names[key % 12]}${Math.floor(key / 12) - 1}`

interface Chord {
  readonly from: number
  readonly to: number
  /** The names, with a '~' before them where they go on from the bar before. */
  readonly names: readonly string[]
  readonly goesOn: boolean
}

/** What a hand sounds in a bar: notes that begin and end together are one chord. */
const chordsIn = ({ notes }: Score, bar: Bar, hand: Hand): readonly Chord[] => {
  const barEnd = bar.start + bar.length
  const chords = new Map<string, Chord>()
  for (const { start, length, key } of notes.filter((n) => n.hand === hand)) {
    const end = start + length
    if (start >= barEnd || end <= bar.start) continue
    const from = Math.max(start, bar.start)
    const to = Math.min(end, barEnd)
    const place = `${from} ${to} ${start} ${end}`
    const others = chords.get(place)?.names ?? []
    const name = `${from > start ? '~' : ''}${nameOf(key)}`
    chords.set(place, { from, to, names: [...others, name], goesOn: to < end })
  }
  return [...chords.values()]
}

/** Chords that follow each other are a voice; what begins before the one before has ended is in another. */
const voicesOf = (chords: readonly Chord[]): readonly (readonly Chord[])[] => {
  const voices: Chord[][] = []
  for (const chord of chords) {
    const free = voices.find((line) => (line.at(-1)?.to ?? 0) <= chord.from)
    if (free) free.push(chord)
    else voices.push([chord])
  }
  return voices
}

/** Each voice fills the bar, with rests where it has nothing. */
const handIn = (score: Score, bar: Bar, hand: Hand): string => {
  const staff = hand === 'right' ? 1 : 2
  const rests = (gap: number): string => restsOf(gap, score.ticksPerQuarter)
  return voicesOf(chordsIn(score, bar, hand))
    .map((line, v) => {
      let at: number = bar.start
      const tokens = line.map(({ from, to, names: all, goesOn }) => {
        const before = rests(from - at)
        at = to
        return `${before}${all.join('+')}/${to - from}${goesOn ? '~' : ''}`
      })
      const whole = `${tokens.join(' ')} ${rests(bar.start + bar.length - at)}`
      return voice(whole, { voice: 4 * staff + v, staff, divisions: score.ticksPerQuarter })
    })
    .join(backup(bar.length))
}

/** Rests of plain values, or of triplets where it must be. */
const restsOf = (gap: number, quarter: number): string => {
  if (gap === 0) return ''
  const value = [4, 2, 1, 1 / 2, 1 / 4, 1 / 8, 1 / 3, 1 / 6].find((n) => n * quarter <= gap)
  if (value === undefined || (gap * 24) % quarter !== 0) throw new Error(`no rest for ${gap}`)
  const triplet = (gap * 8) % quarter !== 0 ? quarter / 3 : value * quarter
  return `r/${triplet} ${restsOf(gap - triplet, quarter)}`
}

const asMusicXml = (score: Score): string =>
  piano(
    ...score.bars.map((bar, i) => {
      const { beats, beatType } = bar.time
      const before = score.bars[i - 1]?.time
      const isNew = before?.beats !== beats || before.beatType !== beatType
      const time = isNew ? `${beats}/${beatType}` : ''
      const opening = attributes({ divisions: score.ticksPerQuarter, time, staves: 2 })
      const content = hands.map((hand) => handIn(score, bar, hand)).filter(Boolean)
      const begin = `${bar.number === 0 ? '|' : ''}${isNew ? opening : ''}`
      return begin + content.join(backup(bar.length))
    }),
  )

describe.each(samples)('%s', (name) => {
  let toolkit: VerovioToolkit
  beforeAll(async () => {
    toolkit = await openEngraverHere()
  })

  test('has the same onsets and keys in verovio’s time map', () => {
    const text = asMusicXml(readSample(name))
    const heard = byVerovio(toolkit, text)
    expect(heard.length).toBe(readSample(name).notes.length)
    expect(byUs(text)).toEqual(heard)
  })

  test('is the same piece with the same notes, read from MusicXML', () => {
    const sample = readSample(name)
    const { score } = readText(asMusicXml(sample))
    const told = (all: readonly Note[]): string[] => all.map((n) => `${n.id} ${n.hand}`)
    expect(told(score.notes)).toEqual(told(sample.notes))
    expect(score.id).toBe(sample.id)
  })
})

test('all sample pieces are there', () => {
  expect(samples).toHaveLength(5)
})
