/** Facts from the MusicXML 4.0 reference (W3C Music Notation Community Group), by the element named. */
import { describe, expect, test } from 'vitest'
import {
  attributes,
  backup,
  declaration,
  forward,
  measures,
  partList,
  piano,
  read,
  readText,
  voice,
} from './musicXmlText'
import { explainWarning } from '@/score/warning'

const begin = attributes()
const bars = (text: string): string[] => {
  const { score } = readText(text)
  const quarters = (ticks: number): number => ticks / score.ticksPerQuarter
  return score.bars.map(
    (b) =>
      `${b.number}:${quarters(b.start)}+${quarters(b.length)} ${b.time.beats}/${b.time.beatType}`,
  )
}

describe('time', () => {
  test('is counted in divisions of a quarter: 24 to it, 8 are a triplet eighth (“divisions”)', () => {
    const text = piano(attributes({ divisions: 24 }) + voice('C4/8 D4/8 E4/8', { divisions: 24 }))
    const { score } = readText(text)
    expect(score.notes.map((n) => (n.length * 3) / score.ticksPerQuarter)).toEqual([1, 1, 1])
  })
  test('goes on when the divisions change inside a part and a measure', () => {
    const change = '<attributes><divisions>7</divisions></attributes>'
    expect(read(piano(begin + voice('C4/4 D4/4') + change + voice('E4/7 F4/7')))).toEqual([
      '0+1 60',
      '1+1 62',
      '2+1 64',
      '3+1 65',
    ])
  })
  test('goes back and forward without a note (“backup”, “forward”)', () => {
    const text = piano(
      begin + voice('C5/16') + backup(16) + forward(8) + voice('E4/8', { voice: 2 }),
    )
    expect(read(text)).toEqual(['0+4 72', '2+2 64'])
  })
  test('does not move for the further notes of a chord, nor for what stands between them (“chord”)', () => {
    const [one = '', two = ''] = voice('C4+E4/8').split(/(?<=<\/note>)/)
    const between = '<direction><direction-type><words>dolce</words></direction-type></direction>'
    expect(read(piano(begin + one + between + two + voice('G4/8')))).toEqual([
      '0+2 60',
      '0+2 64',
      '2+2 67',
    ])
  })
  test('of tuplets stands in the duration already (“time-modification” changes no duration)', () => {
    expect(
      read(piano(attributes({ divisions: 3 }) + voice('C4/2 D4/2 E4/2', { divisions: 3 }))).length,
    ).toBe(3)
    const quintuplet = piano(
      attributes({ divisions: 5 }) + voice('C4/1 D4/1 E4/1 F4/1 G4/1 A4/5', { divisions: 5 }),
    )
    expect(read(quintuplet).at(-1)).toBe('1+1 69')
  })
  test('passes in rests, in cue notes, which are silent, and in notes without pitch, which are left out', () => {
    const cue = voice('G4/4').replace('<note>', '<note><cue/>')
    const drum = voice('r/4').replace(
      '<rest/>',
      '<unpitched><display-step>E</display-step><display-octave>4</display-octave></unpitched>',
    )
    const piece = readText(piano(begin + voice('r/4') + cue + drum + voice('C4/4')))
    expect(piece.score.notes.map((n) => n.start / piece.score.ticksPerQuarter)).toEqual([3])
    expect(piece.warnings.map(explainWarning)).toEqual(['1 note without pitch left out.'])
  })
  test('of a note that lacks its duration is that of its printed value', () => {
    const text = piano(begin + voice('C4/6 D4/2').replaceAll(/<duration>\d+<\/duration>/g, ''))
    expect(read(text)).toEqual(['0+1.5 60', '1.5+0.5 62'])
  })
  test('is rounded, with a warning, where no resolution holds it', () => {
    const primes = [997, 991, 983].map(
      (divisions) =>
        `<attributes><divisions>${divisions}</divisions></attributes>${voice(`C4/${divisions}`, { divisions })}${voice('D4/1', { divisions })}`,
    )
    const piece = readText(piano(...primes))
    expect(piece.score.notes.map((n) => n.key)).toEqual([60, 62, 60, 62, 60, 62])
    expect(piece.warnings.map(explainWarning)).toEqual([
      '3 notes with lengths that no division of the quarter holds; rounded.',
    ])
  })
})

describe('pitch', () => {
  test('is step, octave and alter: C4 is middle C (“octave”), B#3 and Dbb4 are the same key', () => {
    const piece = readText(piano(begin + voice('C4/4 B#3/4 Dbb4/4 F#5/4')))
    expect(piece.score.notes.map((n) => [n.key, n.spelling])).toEqual([
      [60, 'C4'],
      [60, 'B#3'],
      [60, 'Dbb4'],
      [78, 'F#5'],
    ])
  })
  test('is the sounding one under an octave shift (“octave-shift”) and an octave clef (“clef-octave-change”)', () => {
    const shift =
      '<direction><direction-type><octave-shift type="down" size="8"/></direction-type></direction>'
    const clef =
      '<clef><sign>G</sign><line>2</line><clef-octave-change>1</clef-octave-change></clef>'
    expect(read(piano(attributes({ more: clef }) + shift + voice('C6/16')))).toEqual(['0+4 84'])
  })
  test('and key are moved for a transposing part (“transpose”: chromatic, octave-change)', () => {
    const transpose =
      '<transpose><chromatic>-2</chromatic><octave-change>-1</octave-change></transpose>'
    const { score } = readText(piano(attributes({ fifths: 2, more: transpose }) + voice('D5/16')))
    expect(score.notes.map((n) => [n.key, n.spelling])).toEqual([[60, undefined]])
    expect(score.keys.map((k) => k.fifths)).toEqual([0])
  })
  test('between two keys is taken on the natural’s side, with a warning', () => {
    const text = piano(
      begin + voice('F#4/8 Eb4/8').replace('>1<', '>1.5<').replace('>-1<', '>-0.5<'),
    )
    expect(read(text)).toEqual(['0+2 66', '2+2 64'])
    expect(readText(text).warnings.map(explainWarning)[0]).toMatch(/^2 notes between two keys/)
  })
  test('without alter is that of the printed accidental', () => {
    const text = piano(
      begin + voice('A4/16').replace('</type>', '</type><accidental>sharp</accidental>'),
    )
    expect(read(text)).toEqual(['0+4 70'])
  })
  test('outside of the 128 keys is left out, with a warning', () => {
    expect(readText(piano(begin + voice('B9/8 C4/8'))).warnings.map(explainWarning)).toEqual([
      '1 note outside of all keys left out.',
    ])
  })
})

describe('ties', () => {
  test('join notes over bars into one (“tie”)', () => {
    expect(read(piano(begin + voice('C4/16~'), voice('~C4/16~'), voice('~C4/8 C4/8')))).toEqual([
      '0+10 60',
      '10+2 60',
    ])
  })
  test('are taken from what is drawn where no sound is given (“tied”)', () => {
    const text = piano(begin + voice('C4/8~ ~C4/8')).replaceAll(/<tie type="\w+"\/>/g, '')
    expect(read(text)).toEqual(['0+4 60'])
  })
  test('join a note to one in another voice, written before it in the file', () => {
    const text = piano(
      begin + forward(8) + voice('~C4/8') + backup(16) + voice('C4/8~', { voice: 2 }),
    )
    expect(read(text)).toEqual(['0+4 60'])
  })
  test('join each note of a chord by its own key', () => {
    expect(read(piano(begin + voice('C4+E4/8~ ~C4+~F4/8')))).toEqual(['0+4 60', '0+2 64', '2+2 65'])
  })
  test('that nothing answers, or that answer nothing, leave the notes as they are', () => {
    expect(read(piano(begin + voice('C4/4~ D4/4 ~C4/8')))).toEqual(['0+1 60', '1+1 62', '2+2 60'])
  })
  // A tie is written on both notes, start on the first and stop on the second (MusicXML 4.0, “tied”):
  // where the note that follows has no stop, nothing says that the two are one, nor a later one.
  test('that start and are not ended by the next note join neither it nor a later one', () => {
    const text = piano(
      begin + voice('C5/16~'),
      voice('C5/16'),
      voice('~C5/16~'),
      voice('C5/16~'),
      voice('~C5/16'),
    )
    expect(read(text)).toEqual(['0+4 72', '4+4 72', '8+4 72', '12+8 72'])
  })
})

describe('grace notes', () => {
  const text = piano(begin + voice('C4/8 gF4 gE4 D4/8'), voice('C4/16 gB3 gC4'))
  test('take no time, are marked, and stand at the main note after them (“grace”)', () => {
    expect(read(text).slice(0, 4)).toEqual(['0+2 60', '2+2 62', '2 64 grace', '2 65 grace'])
  })
  test('know how many still come before the main note', () => {
    const graces = readText(text).score.notes.filter((n) => n.grace)
    expect(graces.map((n) => [n.key, n.graceRank])).toEqual([
      [64, 0],
      [65, 1],
      [59, 1],
      [60, 0],
    ])
  })
  test('after the last note of a bar stay in it', () => {
    const { score } = readText(text)
    expect(score.notes.filter((n) => n.grace).map((n) => n.barIndex)).toEqual([0, 0, 1, 1])
    expect(score.notes.every((n) => n.start < score.end)).toBe(true)
    const finer = text.replace(
      '</part>',
      `<measure>${attributes({ divisions: 7 })}</measure></part>`,
    )
    expect(readText(finer).score.ticksPerQuarter).toBe(3360)
    expect(readText(finer).score.notes.map((n) => n.id)).toEqual(score.notes.map((n) => n.id))
  })
  test('do not change what piece it is', () => {
    const plain = readText(text.replaceAll(/<note><grace\/>.*?<\/note>/g, ''))
    expect(readText(text).score.id).toBe(plain.score.id)
  })
})

describe('bars', () => {
  test('are as long as what stands in them: pickup 0, a divided bar in two with one number (“implicit”)', () => {
    const text = piano(
      `|${begin}${voice('G4/4')}`,
      voice('C5/8'),
      `|${voice('D5/8')}`,
      voice('E5/16'),
    )
    expect(bars(text)).toEqual(['0:0+1 4/4', '1:1+2 4/4', '1:3+2 4/4', '2:5+4 4/4'])
  })
  test('that are empty are as long as the time signature says', () => {
    expect(bars(piano(attributes({ time: '3/8' }), voice('C4/6')))).toEqual([
      '1:0+1.5 3/8',
      '2:1.5+1.5 3/8',
    ])
  })
  test('have the printed numbers where they count up, else are counted', () => {
    const twoBars = piano(begin + voice('C4/16'), voice('D4/16'))
    expect(bars(twoBars.replace('"1"', '"33"').replace('"2"', '"34"'))[0]).toBe('33:0+4 4/4')
    expect(bars(twoBars.replace('number="2"', 'number="coda"'))[1]).toBe('2:4+4 4/4')
  })
  test('are long enough for the longest part, and even out a rounded duration', () => {
    expect(
      bars(piano(attributes({ divisions: 480 }) + voice('C4/1921', { divisions: 480 }))),
    ).toEqual(['1:0+4 4/4'])
  })
  test.each([
    ['<time><beats>3+2</beats><beat-type>8</beat-type></time>', '5/8'],
    [
      '<time><beats>2</beats><beat-type>4</beat-type><beats>3</beats><beat-type>8</beat-type></time>',
      '7/8',
    ],
    ['<time symbol="cut"><beats>2</beats><beat-type>2</beat-type></time>', '2/2'],
    ['<time><senza-misura/></time>', '9/8'],
    ['', '9/8'],
    ['<time><beats>0</beats><beat-type>4</beat-type></time>', '9/8'],
    ['<time><beats>four</beats><beat-type>4</beat-type></time>', '9/8'],
  ])('in %s are in %s (“time”)', (time, signature) => {
    const text = piano(attributes({ time: '', more: time }) + voice('C4/16 D4/2'))
    expect(bars(text)[0]?.split(' ')[1]).toBe(signature)
  })
  test('change their time where it stands at their beginning', () => {
    const change = '<attributes><time><beats>3</beats><beat-type>4</beat-type></time></attributes>'
    expect(bars(piano(begin + voice('C4/16'), change + voice('C4/12')))).toEqual([
      '1:0+4 4/4',
      '2:4+3 3/4',
    ])
  })
})

test('a score written timewise is the same as partwise (“score-timewise”)', () => {
  const parts = [
    { name: 'Right hand', measures: [begin + voice('C5/16'), voice('D5/16')] },
    { name: 'Left hand', measures: [begin + voice('C3/16'), voice('D3/16')] },
  ]
  const columns = [0, 1].map((i) =>
    parts.map((part, p) => `<part id="P${p + 1}">${part.measures[i] ?? ''}</part>`).join(''),
  )
  const timewise = `${declaration}<score-timewise><part-list>${partList(parts)}</part-list>${measures(columns)}</score-timewise>`
  expect(read(timewise)).toEqual(['0+4 48', '0+4 72', '4+4 50', '4+4 74'])
  expect(readText(timewise).score.notes.map((n) => n.hand)).toEqual([
    'left',
    'right',
    'left',
    'right',
  ])
})
