/** Random scores, and the same music written as MusicXML and as a Standard MIDI File. */
import fc from 'fast-check'
import { key, tempo, tick } from '@/music/units'
import { writeMidiFile } from '@/score/writeMidiFile'
import { attributes, backup, piano, voice } from './musicXmlText'

/** Divisions of a quarter: 60 holds triplets, quintuplets and 32nds but for the last two of them. */
const divisions = 240
const pitches = [
  'C',
  'C#',
  'Db',
  'D',
  'D#',
  'Eb',
  'E',
  'F',
  'F#',
  'Gb',
  'G',
  'G#',
  'Ab',
  'A',
  'A#',
  'Bb',
  'B',
]
const semitones = [0, 1, 1, 2, 3, 3, 4, 5, 6, 6, 7, 8, 8, 9, 10, 10, 11]

interface AnyNote {
  readonly name: string
  readonly key: number
}
/** A chord, a note or, empty, a rest. */
interface AnyChord {
  readonly notes: readonly AnyNote[]
  /** Divisions. */
  readonly length: number
  /** Goes on in the next chord, which has the same notes. */
  readonly tied: boolean
}
export interface AnyScore {
  /** Bars of voices. */
  readonly bars: readonly (readonly AnyVoice[])[]
  readonly time: '4/4' | '3/4' | '2/4'
}
interface AnyVoice {
  readonly staff: 1 | 2
  readonly chords: readonly AnyChord[]
}

const note = fc
  .record({ pitch: fc.nat(pitches.length - 1), octave: fc.integer({ min: 2, max: 6 }) })
  .map(({ pitch, octave }): AnyNote => ({
    name: `${pitches[pitch]}${octave}`,
    key: 12 * (octave + 1) + (semitones[pitch] ?? 0),
  }))
const notes = fc.uniqueArray(note, { maxLength: 3, selector: (n) => n.key })

/** A beat in divisions. */
const beat = fc.constantFrom(
  [240],
  [120, 120],
  [60, 60, 60, 60],
  [180, 60],
  [60, 120, 60],
  [80, 80, 80],
  [48, 48, 48, 48, 48],
  [30, 30, 60, 120],
)

const voiceOf = (staff: 1 | 2, beats: number): fc.Arbitrary<AnyVoice> =>
  fc
    .array(fc.tuple(beat, fc.array(notes, { minLength: 5, maxLength: 5 })), {
      minLength: beats,
      maxLength: beats,
    })
    .map((all) => ({
      staff,
      chords: all.flatMap(([lengths, chords]) =>
        lengths.map((length, i) => ({ notes: chords[i] ?? [], length, tied: false })),
      ),
    }))

/** One or two voices on the upper staff, one on the lower; some last chords of a bar are tied to the next bar. */
export const anyScore: fc.Arbitrary<AnyScore> = fc
  .constantFrom('4/4', '3/4', '2/4')
  .chain((time) => {
    const beats = Number(time[0])
    const bar = fc.record({
      upper: fc.tuple(voiceOf(1, beats), fc.option(voiceOf(1, beats), { nil: undefined })),
      lower: voiceOf(2, beats),
      tied: fc.boolean(),
    })
    return fc.array(bar, { minLength: 1, maxLength: 4 }).map((bars) => ({
      time: time as AnyScore['time'],
      bars: tieBars(
        bars.map(({ upper: [one, two], lower, tied }) => ({
          tied,
          voices: [one, lower, ...(two ? [two] : [])],
        })),
      ),
    }))
  })

const tieBars = (
  bars: readonly { readonly tied: boolean; readonly voices: readonly AnyVoice[] }[],
): AnyVoice[][] => {
  const result = bars.map(({ voices }) => voices.map((v) => ({ ...v, chords: [...v.chords] })))
  for (const [i, { tied }] of bars.entries()) {
    const last = result[i]?.[0]?.chords
    const next = result[i + 1]?.[0]?.chords
    const chord = last?.at(-1)
    const after = next?.[0]
    if (!tied || !last || !next || !chord || !after || chord.notes.length === 0) continue
    last[last.length - 1] = { ...chord, tied: true }
    next[0] = { ...after, notes: chord.notes }
  }
  return result
}

/** Each note by where it starts in divisions, ties joined. */
export const notesIn = ({ bars, time }: AnyScore) => {
  const full = Number(time[0]) * divisions
  const found: { start: number; length: number; key: number; hand: 'left' | 'right' }[] = []
  for (const [b, voices] of bars.entries())
    for (const [v, { staff, chords }] of voices.entries()) {
      let at = b * full
      for (const [c, chord] of chords.entries()) {
        const continues = v === 0 && c === 0 && bars[b - 1]?.[0]?.chords.at(-1)?.tied
        for (const { key: k } of chord.notes) {
          const before =
            continues &&
            found.find((n) => n.start + n.length === at && n.key === k && n.hand === 'right')
          if (before) before.length += chord.length
          else
            found.push({
              start: at,
              length: chord.length,
              key: k,
              hand: staff === 1 ? 'right' : 'left',
            })
        }
        at += chord.length
      }
    }
  return found
}

/** With an id for each note that sounds anew, in the order of the file. */
export const asMusicXml = ({ bars, time }: AnyScore): string => {
  const full = Number(time[0]) * divisions
  return piano(
    ...bars.map((voices, b) => {
      const begin = b === 0 ? attributes({ divisions, time, staves: 2 }) : ''
      return (
        begin +
        voices
          .map(({ staff, chords }, v) => {
            const tiedInto = v === 0 && bars[b - 1]?.[0]?.chords.at(-1)?.tied
            const line = chords.map((chord, c) => lineOf(chord, c === 0 && tiedInto === true))
            return voice(line.join(' '), { voice: v + 1, staff, divisions })
          })
          .join(backup(full))
      )
    }),
  )
}

const lineOf = ({ notes: all, length, tied }: AnyChord, tiedInto: boolean): string => {
  const names = all.map(({ name }) => (tiedInto ? `~${name}` : name))
  return `${names.length > 0 ? names.join('+') : 'r'}/${length}${tied ? '~' : ''}`
}

/** A track for each hand. */
export const asMidi = (score: AnyScore): Uint8Array =>
  writeMidiFile({
    title: 'Any',
    ticksPerQuarter: divisions,
    tempos: [{ start: tick(0), tempo: tempo(120) }],
    times: [{ start: tick(0), time: { beats: Number(score.time[0]), beatType: 4 } }],
    keys: [],
    tracks: (['right', 'left'] as const).map((hand) => ({
      name: `${hand} hand`,
      notes: notesIn(score)
        .filter((n) => n.hand === hand)
        .map((n) => ({ start: tick(n.start), length: tick(n.length), key: key(n.key) })),
    })),
  })

export { divisions as divisionsOfAny }
