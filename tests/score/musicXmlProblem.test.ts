import { describe, expect, test } from 'vitest'
import { readPiece } from '@/score/readPiece'
import { explainReadProblem } from '@/score/readProblem'
import { readTake } from '@/score/readTake'
import { attributes, bytesOf, declaration, partwise, piano, voice } from './musicXmlText'
import { explainWarning } from '@/score/warning'

const score = piano(attributes() + voice('C4/16'))
const outcome = (bytes: Uint8Array): string => {
  const piece = readPiece(bytes, 'piece.xml')
  if (!piece.ok) return explainReadProblem(piece.reason)
  return [
    piece.value.score.notes.map((n) => n.key).join(' '),
    ...piece.value.warnings.map(explainWarning),
  ].join('; ')
}
const inLatin1 = (text: string): Uint8Array => Uint8Array.from(text, (c) => c.charCodeAt(0))
const inUtf16 = (text: string, littleEndian: boolean, mark = true): Uint8Array => {
  const units = [...(mark ? [0xfeff] : []), ...Array.from(text, (c) => c.charCodeAt(0))]
  const view = new DataView(new ArrayBuffer(units.length * 2))
  for (const [i, unit] of units.entries()) view.setUint16(i * 2, unit, littleEndian)
  return new Uint8Array(view.buffer)
}
const titled = (declared: string, title: string): string =>
  partwise(
    [{ measures: [attributes() + voice('C4/16')] }],
    `<movement-title>${title}</movement-title>`,
  ).replace(declaration, declared)
const titleOf = (bytes: Uint8Array): string => {
  const piece = readPiece(bytes, 'piece.xml')
  return piece.ok ? piece.value.score.title : explainReadProblem(piece.reason)
}

describe('a file is read in whatever letters it is written', () => {
  const latin = '<?xml version="1.0" encoding="ISO-8859-1"?>'
  test.each<[string, Uint8Array]>([
    ['UTF-8', bytesOf(titled(declaration, 'Étude'))],
    [
      'UTF-8 with a byte-order mark',
      Uint8Array.from([0xef, 0xbb, 0xbf, ...bytesOf(titled(declaration, 'Étude'))]),
    ],
    ['UTF-8 after blank lines', bytesOf(`\n\n ${titled(declaration, 'Étude')}`)],
    ['UTF-8 without a declaration', bytesOf(titled('', 'Étude'))],
    ['Latin-1', inLatin1(titled(latin, 'Étude'))],
    [
      'Latin-1 by its other name',
      inLatin1(titled(latin.replace('ISO-8859-1', 'windows-1252'), 'Étude')),
    ],
    [
      'UTF-16, low bytes first',
      inUtf16(titled('<?xml version="1.0" encoding="UTF-16"?>', 'Étude'), true),
    ],
    [
      'UTF-16, high bytes first',
      inUtf16(titled('<?xml version="1.0" encoding="UTF-16"?>', 'Étude'), false),
    ],
    [
      'UTF-16 without a byte-order mark',
      inUtf16(titled('<?xml version="1.0" encoding="UTF-16"?>', 'Étude'), true, false),
    ],
    [
      'UTF-8 declared as UTF-16',
      bytesOf(titled('<?xml version="1.0" encoding="UTF-16"?>', 'Étude')),
    ],
  ])('%s', (_, bytes) => {
    expect(titleOf(bytes)).toBe('Étude')
  })
  test('letters beyond the basic plane, and typographic signs of windows-1252', () => {
    expect(titleOf(bytesOf(titled(declaration, '𝄞 “Étude”')))).toBe('𝄞 “Étude”')
    const quoted = inLatin1(titled(latin, '\u0093Study\u0094'))
    expect(titleOf(quoted)).toBe('“Study”')
  })
  test('Latin-1 that says it is UTF-8, and an encoding that is not known, with a warning', () => {
    expect(outcome(inLatin1(titled(declaration, 'Étude')))).toBe(
      '60; The file’s letters are not in UTF-8 as read here; titles and names may look odd.',
    )
    const russian = titled(declaration.replace('UTF-8', 'KOI8-R'), 'x')
    expect(outcome(bytesOf(russian))).toMatch(/^60; .* not in KOI8-R /)
  })
})

describe('a file that is no whole MusicXML gets one sentence', () => {
  const damaged = (line: number, what: string): string =>
    `The file is damaged: at line ${line} ${what}; copy or export it again.`
  const cut = (line: number, inside: string): string =>
    `The file is cut short: it ends at line ${line}, inside <${inside}>; copy or export it again.`
  const lineOf = (text: string, part: string): number =>
    text.slice(0, text.indexOf(part)).split('\n').length
  const entityBomb = `${declaration}<!DOCTYPE score-partwise [\n<!ENTITY a "ha">\n<!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">\n]>\n<score-partwise>&b;</score-partwise>`
  test.each<[string, string, string]>([
    ['cut inside a note', score.slice(0, score.indexOf('<octave>')), cut(5, 'pitch')],
    ['cut inside a tag', score.slice(0, score.indexOf('<octave>') + 4), cut(5, 'pitch')],
    [
      'cut after the declaration',
      declaration,
      'The file is cut short: it ends at line 2; copy or export it again.',
    ],
    [
      'with an element closed inside another',
      score.replace('</pitch>', ''),
      damaged(5, '<pitch> does not end before something else does'),
    ],
    [
      'with an end that was never begun',
      score.replace('<note>', '<note></x>'),
      damaged(5, '<note> does not end before something else does'),
    ],
    [
      'with a sign that XML does not know',
      score.replace('Piano', 'Piano&nbsp;solo'),
      damaged(2, 'a sign (&…;) is used that XML does not know'),
    ],
    [
      'with an attribute twice',
      score.replace('<part id="P1">', '<part id="P1" id="P1">'),
      damaged(
        lineOf(score, '<part id="P1">'),
        'the XML is not well-formed (duplicate attribute: id)',
      ),
    ],
    [
      'that defines entities',
      entityBomb,
      'The file defines words of its own (<!ENTITY>, at line 5), which can do harm and which no MusicXML needs: export the piece again.',
    ],
    [
      'of another kind of XML',
      '<svg xmlns="http://www.w3.org/2000/svg"><g/></svg>',
      'This XML file holds <svg> and no score of MusicXML (<score-partwise>): export the piece as MusicXML and choose that.',
    ],
    [
      'a page of the web',
      '<!DOCTYPE html><html><head><meta charset="utf-8"></head></html>',
      'This XML file holds <html> and no score of MusicXML (<score-partwise>): export the piece as MusicXML and choose that.',
    ],
    [
      'of elements in elements without end',
      `<score-partwise>${'<part>'.repeat(100)}`,
      'The file is no usual MusicXML: at line 1 more than 64 elements stand inside each other; export the piece again.',
    ],
    [
      'without notes',
      piano(attributes() + voice('r/16')),
      'The file is without a single note: choose another, or export the piece with its notes.',
    ],
    [
      'without parts',
      '<score-partwise></score-partwise>',
      'The file is without a single note: choose another, or export the piece with its notes.',
    ],
    [
      'with grace notes only',
      piano(attributes() + voice('gC4 r/16')),
      'The file is without a single note: choose another, or export the piece with its notes.',
    ],
    [
      'for drums',
      score.replace(/<pitch>.*<\/pitch>/, '<unpitched/>'),
      'The file has notes for drums only (channel 10, or without pitch): choose a file with a piano part.',
    ],
    [
      'with a duration of years',
      score.replaceAll('<duration>16<', '<duration>99999999999<'),
      'The last note stands more than 20000 bars after the beginning, so a time in the file must be wrong: export it again.',
    ],
    [
      'with bars without end',
      score.replace('</part>', `${'<measure/>'.repeat(20_001)}</part>`),
      'The last note stands more than 20000 bars after the beginning, so a time in the file must be wrong: export it again.',
    ],
  ])('%s', (_, text, sentence) => {
    expect(outcome(bytesOf(text))).toBe(sentence)
  })

  test('a text, in whatever letters', () => {
    for (const bytes of [
      bytesOf('Dear pianist'),
      inUtf16('Dear pianist', true),
      inUtf16('x', false),
    ])
      expect(outcome(bytes)).toMatch(/^This is neither a Standard MIDI File nor MusicXML/)
  })
  test('in letters of four bytes', () => {
    expect(outcome(Uint8Array.from([0xff, 0xfe, 0, 0, 0x3c, 0, 0, 0]))).toBe(
      'The file is written in UTF-32, which is not read here: export it again in UTF-8.',
    )
  })
  test('of more events than a piece can have', () => {
    const many = '<backup/>'.repeat(500_001)
    const text = `<score-partwise><part id="a"><measure>${many}</measure></part></score-partwise>`
    expect(outcome(bytesOf(text))).toBe(
      'The file holds more than 500000 events, too many for one piece: export it as shorter pieces.',
    )
  })
  test('when a take was expected', () => {
    const take = readTake(bytesOf(score))
    expect(take.ok ? '' : explainReadProblem(take.reason)).toMatch(/^This is no Standard MIDI File/)
  })
  test('cut short anywhere', () => {
    const bytes = bytesOf(score.trimEnd())
    for (let length = 1; length < bytes.length; length++)
      expect(outcome(bytes.slice(0, length))).toMatch(
        /^The file is cut short: it ends at line \d[^\n]*\.$/,
      )
  })
})

describe('a document type', () => {
  const typed = (type: string): string => score.replace(declaration, `${declaration}${type}\n`)
  test('of older MusicXML is left alone and nothing is fetched', () => {
    const type =
      '<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 3.1 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">'
    expect(outcome(bytesOf(typed(type)))).toBe('60')
  })
  test('with an entity that reads another file is refused', () => {
    const type = '<!DOCTYPE score-partwise [<!ENTITY secret SYSTEM "file:///etc/passwd">]>'
    expect(outcome(bytesOf(typed(type).replace('Piano', '&secret;')))).toMatch(
      /defines words of its own/,
    )
  })
})
