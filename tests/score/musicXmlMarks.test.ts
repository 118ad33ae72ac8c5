/** Facts from the MusicXML 4.0 reference (W3C Music Notation Community Group), by the element named. */
import { describe, expect, test } from 'vitest'
import { cutChunk } from '@/music/chunk'
import { tick } from '@/music/units'
import { attributes, backup, partwise, piano, readText, voice } from './musicXmlText'

const begin = attributes()
const first = (marks: string) => readText(piano(begin + voice('C4/16', { marks }))).score.notes[0]

describe('ornaments', () => {
  test.each([
    ['trill-mark', 'trill'],
    ['shake', 'trill'],
    ['mordent', 'mordent'],
    ['inverted-mordent', 'mordent'],
    ['turn', 'turn'],
    ['inverted-turn', 'turn'],
    ['delayed-turn', 'turn'],
    ['tremolo', 'tremolo'],
    ['accidental-mark', undefined],
  ])('<%s/> is a %s (“ornaments”)', (name, ornament) => {
    expect(first(`<notations><ornaments><${name}/></ornaments></notations>`)?.ornament).toBe(
      ornament,
    )
  })
  // MusicXML 4.0: “mordent” has the vertical line, “inverted-mordent” has none.
  test.each([
    ['mordent', undefined],
    ['inverted-mordent', true],
    ['inverted-turn', true],
    ['turn', undefined],
  ])('<%s/> is inverted: %s', (name, inverted) => {
    expect(first(`<notations><ornaments><${name}/></ornaments></notations>`)?.inverted).toBe(
      inverted,
    )
  })
  test.each([
    ['<tremolo>2</tremolo>', { kind: 'single', strokes: 2 }],
    ['<tremolo type="single">3</tremolo>', { kind: 'single', strokes: 3 }],
    ['<tremolo type="start">3</tremolo>', { kind: 'from', strokes: 3 }],
    ['<tremolo type="stop">4</tremolo>', { kind: 'to', strokes: 4 }],
    ['<tremolo>many</tremolo>', { kind: 'single', strokes: 3 }],
    ['<trill-mark/>', undefined],
  ])('%s is written %o (“tremolo”)', (sign, tremolo) => {
    expect(first(`<notations><ornaments>${sign}</ornaments></notations>`)?.tremolo).toEqual(tremolo)
  })
  test('of a later note of a tie stay with the joined note', () => {
    const marks = '<notations><ornaments><trill-mark/></ornaments></notations>'
    const { score } = readText(piano(begin + voice('C4/8~') + voice('~C4/8', { marks })))
    expect(score.notes.map((n) => n.ornament)).toEqual(['trill'])
  })
  test('and rolled chords reach the chunk as what may be played besides (“arpeggiate”)', () => {
    const trill = '<notations><ornaments><trill-mark/></ornaments></notations>'
    const rolled = '<notations><arpeggiate/></notations>'
    const { score } = readText(
      piano(
        begin +
          voice('gG3') +
          voice('C4/8', { marks: trill }) +
          voice('C4+G4/8', { marks: rolled }),
      ),
    )
    const onsets = cutChunk(score, tick(0), score.end, 'both')?.onsets ?? []
    expect(onsets.map((o) => `${o.notes.length} ${o.rolled} ${o.auxiliaries.join(' ')}`)).toEqual([
      '1 false 55 58 59 60 61 62',
      '2 true ',
    ])
  })
})

describe('fingers (“fingering”)', () => {
  const fingers = (...texts: readonly string[]) =>
    first(
      `<notations><technical>${texts.map((t) => `<fingering${t}</fingering>`).join('')}</technical></notations>`,
    )?.fingers
  test.each([
    [['>3'], [3]],
    [[' placement="below"> 1 '], [1]],
    [
      ['>2', ' substitution="yes">3'],
      [2, 3],
    ],
    [['>4-5'], [4, 5]],
    [['>2', ' alternate="yes">3'], [2]],
    [['>6'], undefined],
    [['>p'], undefined],
  ])('%j are %j', (texts, expected) => {
    expect(fingers(...texts)).toEqual(expected)
  })
})

describe('tempo', () => {
  const tempos = (...marks: readonly string[]) => {
    const { score } = readText(piano(begin + marks.map((m) => m + voice('C4/4')).join('')))
    return score.tempos.map(({ start, tempo }) => `${start / score.ticksPerQuarter}: ${tempo}`)
  }
  const metronome = (inner: string, sound = '') =>
    `<direction><direction-type><metronome>${inner}</metronome></direction-type>${sound}</direction>`
  const quarter = '<beat-unit>quarter</beat-unit>'
  test.each([
    ['<sound tempo="72"/>', '0: 72'],
    [metronome(`${quarter}<per-minute>100</per-minute>`), '0: 100'],
    [metronome('<beat-unit>half</beat-unit><per-minute>60</per-minute>'), '0: 120'],
    [metronome(`${quarter}<beat-unit-dot/><per-minute>60</per-minute>`), '0: 90'],
    [metronome(`${quarter}<per-minute>c. 84-88</per-minute>`), '0: 84'],
    [metronome(`${quarter}<per-minute>lively</per-minute>`), '0: 120'],
    [metronome(`${quarter}<per-minute>100</per-minute>`, '<sound tempo="96"/>'), '0: 96'],
    ['<sound tempo="0"/>', '0: 120'],
    ['<sound tempo="fast"/>', '0: 120'],
  ])('%s gives %s (“sound”, “metronome”; 120 where none is given)', (mark, expected) => {
    expect(tempos(mark)).toEqual([expected])
  })
  test('changes where it stands, by its offset where that is for playing (“offset”)', () => {
    const late = '<sound tempo="60"><offset>2</offset></sound>'
    expect(tempos('<sound tempo="72"/>', late)).toEqual(['0: 72', '1.5: 60'])
    const drawn =
      '<direction><direction-type><words>rit.</words></direction-type><offset>2</offset><sound tempo="60"/></direction>'
    expect(tempos('<sound tempo="72"/>', drawn)).toEqual(['0: 72', '1: 60'])
  })
  test('of two note values that are to last alike is worked out: quarter = dotted quarter', () => {
    const same = metronome(`${quarter}${quarter}<beat-unit-dot/>`)
    expect(tempos('<sound tempo="80"/>', same)).toEqual(['0: 80', '1: 120'])
  })
})

describe('key signatures (“key”)', () => {
  const keys = (inner: string) =>
    readText(piano(attributes({ more: '' }).replace(/<key>.*<\/key>/, inner) + voice('C4/16')))
      .score.keys
  test.each([
    ['<key><fifths>-3</fifths><mode>minor</mode></key>', -3, 'minor'],
    ['<key><fifths>4</fifths></key>', 4, 'major'],
    ['<key><fifths>2</fifths><mode>dorian</mode></key>', 2, 'major'],
    ['<key><fifths>8</fifths></key>', -4, 'major'],
    [
      '<key number="2"><fifths>5</fifths></key><key number="1"><fifths>1</fifths></key>',
      1,
      'major',
    ],
  ])('%s', (inner, fifths, mode) => {
    expect(keys(inner)).toEqual([{ start: 0, fifths, mode }])
  })
  test('of single accidentals are left out; the notes carry their own', () => {
    expect(keys('<key><key-step>F</key-step><key-alter>1</key-alter></key>')).toEqual([])
  })
})

describe('title and composer', () => {
  const titled = (head: string) =>
    readText(partwise([{ measures: [begin + voice('C4/16')] }], head), 'a file.mxl')
  test.each([
    ['<movement-title>The Mill &amp; the Stream</movement-title>', 'The Mill & the Stream'],
    [
      '<work><work-title>Six Studies</work-title></work><movement-title>No. 2</movement-title>',
      'Six Studies: No. 2',
    ],
    ['<work><work-title>Study</work-title></work><movement-title>Study</movement-title>', 'Study'],
    ['<movement-title> </movement-title>', 'a file'],
    ['<movement-title><![CDATA[Étude <2>]]></movement-title>', 'Étude <2>'],
  ])('%s', (head, title) => {
    expect(titled(head).score.title).toBe(title)
  })
  test('are found in “identification”', () => {
    const head =
      '<identification><creator type="lyricist">B</creator><creator type="composer">A. Miller</creator></identification>'
    expect(titled(head).composer).toBe('A. Miller')
  })
})

describe('hands', () => {
  const hands = (text: string) =>
    readText(text).score.notes.map((n) => `${n.key} ${n.hand} ${n.handFrom}`)
  const two = attributes({ staves: 2 })
  test('are the staves: the upper one right, the lower one left, whatever the voice and height', () => {
    const text = piano(
      two + voice('C3/16', { staff: 1 }) + backup(16) + voice('C6/16', { voice: 5, staff: 2 }),
    )
    expect(hands(text)).toEqual(['48 right file', '84 left file'])
  })
  test('are known where only the upper staff has notes', () => {
    expect(hands(piano(two + voice('C3/16', { staff: 1 })))).toEqual(['48 right file'])
  })
  test('are left to be inferred where there is one staff', () => {
    expect(hands(piano(begin + voice('C3/8 C5/8')))).toEqual([
      '48 left inferred',
      '72 right inferred',
    ])
  })
  test('of three staves are known above and below and inferred between', () => {
    const three = attributes({ staves: 3 })
    const text = piano(
      three +
        voice('C5/16', { staff: 1 }) +
        backup(16) +
        voice('C4/16', { staff: 2 }) +
        backup(16) +
        voice('C3/16', { staff: 3 }),
    )
    expect(hands(text)).toEqual(['48 left file', '60 right inferred', '72 right file'])
  })
  test('meeting on one key, and voices in unison in one hand, keep a note each', () => {
    const text = piano(
      two +
        voice('C4/16', { staff: 1 }) +
        backup(16) +
        voice('C4/8', { voice: 2, staff: 1 }) +
        backup(8) +
        voice('C4/4', { voice: 5, staff: 2 }),
    )
    const { notes } = readText(text).score
    expect(notes.map((n) => [n.id, n.hand])).toEqual([
      ['n0k60', 'right'],
      ['n0k60b', 'right'],
      ['n0k60c', 'left'],
    ])
  })
})
