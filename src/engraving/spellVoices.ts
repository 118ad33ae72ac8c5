import type { Note } from '@/music/music'
import type { Key } from '@/music/units'
import { scalePlace, spell, type Signature, type Spelling } from '@/music/spelling'
import { spelledAs } from './spelledAs'
import type { Voice, WrittenChord } from './voices'

export interface SignedBar {
  readonly number: number
  readonly start: number
  readonly end: number
  readonly signature: Signature
}

/** Grace notes by the note before which they stand. */
export type Graces = ReadonlyMap<string, readonly Note[]>

/** Spells every note and grace note of a staff: as the file says, else by the key. */
export const spellVoices = (
  voices: readonly Voice[],
  bars: readonly SignedBar[],
  graces: Graces,
  centres: Centres,
): ReadonlyMap<string, Spelling> => {
  const spellings = new Map<string, Spelling>()
  for (const voice of voices)
    for (const [i, chord] of voice.entries()) {
      const bar = bars.findLast(({ start }) => start <= chord.start) ?? bars[0]
      const signature = bar?.signature ?? { fifths: 0, mode: 'major' }
      const coming = voice[i + 1]?.notes.map((n) => n.key) ?? []
      const centre = bar && centres.get(bar.number)
      for (const note of chord.notes) {
        const near = { next: stepFrom(note.key, coming), centre }
        spellings.set(note.id, spelledAs(note) ?? spell(note.key, signature, near))
        for (const grace of graces.get(note.id) ?? []) {
          const next = stepFrom(grace.key, [note.key])
          spellings.set(grace.id, spelledAs(grace) ?? spell(grace.key, signature, { next }))
        }
      }
    }
  return spellings
}

/** The mean place of each bar's scale notes on the line of fifths, by bar number, of both hands. */
export type Centres = ReadonlyMap<number, number>

export const centresOf = (bars: readonly SignedBar[], chords: readonly WrittenChord[]): Centres =>
  new Map(
    bars.flatMap((bar) => {
      const own = chords.filter((c) => c.start >= bar.start && c.start < bar.end)
      const places = own
        .flatMap((c) => c.notes)
        .flatMap((n) => scalePlace(n.key, bar.signature) ?? [])
      const mean = places.reduce((sum, place) => sum + place, 0) / places.length
      return places.length > 0 ? [[bar.number, mean] as const] : []
    }),
  )

const stepFrom = (key: Key, coming: readonly Key[]): Key | undefined =>
  coming.find((next) => Math.abs(next - key) === 1)
