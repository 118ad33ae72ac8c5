/** Long pieces by rule, in both formats: two lines of sixteenths, keys and lengths in turn. */
import { key, tempo, tick } from '@/music/units'
import { writeMidiFile, type NoteToWrite } from '@/score/writeMidiFile'

/** In a track for each name: one for each hand, or one for both; as a rule the hands keep two octaves apart. */
export const longMidi = (
  notes: number,
  names: readonly string[],
  lowestKeys: readonly number[] = lowest,
): Uint8Array => {
  const lines = lowestKeys.map((low) => midiLine(notes / 2, low))
  return writeMidiFile({
    title: 'Long',
    ticksPerQuarter: 480,
    tempos: Array.from({ length: 50 }, (_, i) => ({ start: tick(i * 9600), tempo: tempo(60 + i) })),
    times: [{ start: tick(0), time: { beats: 4, beatType: 4 } }],
    keys: [],
    tracks: names.map((name, i) => ({
      name,
      notes: names.length === 1 ? lines.flat() : (lines[i] ?? []),
    })),
  })
}

/** On two staves, 32 notes a bar, with all that a notation program writes of a note. */
export const longMusicXml = (notes: number): string => {
  const bars = Array.from({ length: notes / 32 }, (_, bar) => {
    const [right, left] = lowest.map((low, staff) =>
      Array.from({ length: 16 }, (_note, i) => xmlNote(low + keyOver(bar * 16 + i), i, staff + 1)),
    )
    const begin = bar === 0 ? attributes : ''
    const back = '      <backup>\n        <duration>16</duration>\n      </backup>\n'
    return `    <measure number="${bar + 1}">\n${begin}${right?.join('')}${back}${left?.join('')}    </measure>\n`
  })
  return `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">
<score-partwise version="4.0">
  <part-list>
    <score-part id="P1">
      <part-name>Piano</part-name>
    </score-part>
  </part-list>
  <part id="P1">
${bars.join('')}  </part>
</score-partwise>
`
}

/** The lowest keys of right and left hand: too far apart for one hand; and so near that one could play both. */
const lowest = [67, 43]
export const nearHands = [60, 52]
const keyOver = (i: number): number => (i * 7) % 17

const midiLine = (count: number, low: number): NoteToWrite[] =>
  Array.from({ length: count }, (_, i) => ({
    start: tick(i * 120),
    length: tick(i % 5 === 0 ? 60 : 110),
    key: key(low + keyOver(i)),
    velocity: 40 + (i % 50),
  }))

const attributes = `      <attributes>
        <divisions>4</divisions>
        <key>
          <fifths>0</fifths>
        </key>
        <time>
          <beats>4</beats>
          <beat-type>4</beat-type>
        </time>
        <staves>2</staves>
        <clef number="1">
          <sign>G</sign>
          <line>2</line>
        </clef>
        <clef number="2">
          <sign>F</sign>
          <line>4</line>
        </clef>
      </attributes>
`

const names = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B']

const xmlNote = (key: number, place: number, staff: number): string => {
  const [step, sharp] = names[key % 12] ?? 'C'
  const alter = sharp ? '          <alter>1</alter>\n' : ''
  const accidental = sharp ? '        <accidental>sharp</accidental>\n' : ''
  const beam = place % 4 === 0 ? 'begin' : place % 4 === 3 ? 'end' : 'continue'
  return `      <note default-x="${80 + place * 12}.5">
        <pitch>
          <step>${step}</step>
${alter}          <octave>${Math.floor(key / 12) - 1}</octave>
        </pitch>
        <duration>1</duration>
        <voice>${staff === 1 ? 1 : 5}</voice>
        <type>16th</type>
${accidental}        <stem>${staff === 1 ? 'up' : 'down'}</stem>
        <staff>${staff}</staff>
        <beam number="1">${beam}</beam>
        <beam number="2">${beam}</beam>
      </note>
`
}
