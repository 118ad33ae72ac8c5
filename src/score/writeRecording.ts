import type { HandChoice } from '@/music/music'
import { tempo, tick } from '@/music/units'
import { quantiseTake, recordedTicks, type Recording } from './quantiseTake'
import { writeMidiFile } from './writeMidiFile'

/**
 * A recording on its grid as a Standard MIDI File; `undefined` when nothing was played. One track: of
 * both hands it has no name, so that the reader infers which hand plays what.
 */
export const writeRecording = (
  recording: Recording,
  hand: HandChoice,
  title: string,
): Uint8Array | undefined => {
  const { notes, pickup } = quantiseTake(recording)
  if (notes.length === 0) return undefined
  const { time } = recording
  const upbeat = { beats: (pickup * time.beatType) / (4 * recordedTicks), beatType: time.beatType }
  return writeMidiFile({
    title,
    ticksPerQuarter: recordedTicks,
    tempos: [{ start: tick(0), tempo: tempo(60_000 / recording.quarter) }],
    times: [...(pickup > 0 ? [{ start: tick(0), time: upbeat }] : []), { start: pickup, time }],
    keys: [],
    tracks: [{ name: hand === 'both' ? '' : `${hand} hand`, notes }],
  })
}
