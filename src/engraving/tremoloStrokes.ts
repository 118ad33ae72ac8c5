import type { Piece } from './layers'

/** Where the file does not say: as fast as it goes. Common practice, no source. */
const usual = 3

/** MEI attributes of a tremolo on one note or chord; `undefined` where there is none. */
export const noteStrokes = ({ notes, value, tremolo }: Piece): string | undefined => {
  const note = notes.find(({ ornament }) => ornament === 'tremolo')
  if (!note || tremolo) return undefined
  return `unitdur="${unit(flagsOf(value.dur) + (note.tremolo?.strokes ?? usual))}"`
}

/** MEI attributes of a tremolo between two. */
export const pairStrokes = ({ notes, value }: Piece): string => {
  const strokes = notes.find(({ tremolo }) => tremolo)?.tremolo?.strokes ?? usual
  const beams = flagsOf(value.dur) + strokes
  return `beams="${beams}" unitdur="${unit(beams)}"`
}

/** An eighth has one flag; the strokes of a tremolo are added to it. */
const flagsOf = (dur: string): number => Math.max(0, Math.log2(Number(dur) / 4) || 0)

/** What has so many beams: three are a thirty-second. MEI goes to 128ths with five here. */
const unit = (beams: number): number => 4 * 2 ** Math.min(5, Math.max(1, beams))
