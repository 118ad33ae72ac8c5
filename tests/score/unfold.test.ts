/** How repeats are played: common practice, no source. */
import { describe, expect, test } from 'vitest'
import type { BarSigns } from '@/score/musicXml'
import { unfold } from '@/score/unfold'
import { attributes, piano, readText, voice } from './musicXmlText'

/**
 * Bars as a line of words: '|:' and ':|' around a bar are repeats, ':|3' one played three times,
 * '1[', '2[' and ']' begin and end an ending, the other signs have their names.
 */
const play = (line: string): string => unfold(line.split(' ').map(signsOf)).join(' ')

const signsOf = (word: string): BarSigns => {
  const times = /:\|(\d)/.exec(word)?.[1]
  const ending = /^([\d,]+)\[/.exec(word)?.[1]
  return {
    ...(word.startsWith('|:') ? { repeatFrom: true } : {}),
    ...(word.includes(':|') ? { repeatBack: { times: times ? Number(times) : undefined } } : {}),
    ...(ending ? { ending: ending.split(',').map(Number) } : {}),
    ...(word.endsWith(']') ? { endingOver: true } : {}),
    ...(word.includes('DC') ? { daCapo: true } : {}),
    ...(word.includes('DS') ? { dalSegno: true } : {}),
    ...(word.includes('Segno') ? { segno: true } : {}),
    ...(word.includes('ToCoda') ? { toCoda: true } : {}),
    ...(word.startsWith('Coda') ? { coda: true } : {}),
    ...(word.includes('Fine') ? { fine: true } : {}),
  }
}

describe('bars are played', () => {
  test.each([
    ['in written order without signs', '- - -', '0 1 2'],
    ['twice between repeats', '- |: :| -', '0 1 2 1 2 3'],
    ['twice from the beginning where no repeat opens', '- :| -', '0 1 0 1 2'],
    ['from after the last repeat where none opens', '- :| - :|', '0 1 0 1 2 3 2 3'],
    ['as often as the file says', '|:- :|3', '0 1 0 1 0 1'],
    ['with a first and second ending', '- 1[:|] 2[] -', '0 1 0 2 3'],
    ['with endings of two bars', '- 1[ :|] 2[ -] -', '0 1 2 0 3 4 5'],
    ['with an ending for two passes', '- 1,2[:|] 3[]', '0 1 0 1 0 2'],
    ['with a first ending alone', '- 1[:|] - -', '0 1 0 2 3'],
    ['with endings again in a later stretch', '- 1[:|] 2[] |:- 1[:|] 2[]', '0 1 0 2 3 4 3 5'],
    ['da capo al fine, repeats taken once', '|:- Fine:| - DC', '0 1 0 1 2 3 0 1'],
    ['da capo with the last ending', '- 1[:|] 2[] DC', '0 1 0 2 3 0 2 3'],
    ['dal segno', '- Segno - DS -', '0 1 2 3 1 2 3 4'],
    ['dal segno al coda', '- Segno ToCoda - DS Coda -', '0 1 2 3 4 1 2 5 6'],
  ])('%s', (_, line, order) => {
    expect(play(line)).toBe(order)
  })
  test('without end nowhere: signs that ask for more than anyone plays are cut off', () => {
    expect(unfold([{ repeatBack: { times: 1e9 } }]).length).toBe(20_000)
  })
})

test('a file tells the order where it is not the written one (“repeat”, “ending”, “sound”)', () => {
  const bar = voice('C4/16')
  const left = (inner: string): string => `<barline location="left">${inner}</barline>`
  const right = (inner: string): string => `<barline location="right">${inner}</barline>`
  const text = piano(
    attributes() + left('<repeat direction="forward"/>') + bar,
    left('<ending number="1" type="start"/>') +
      bar +
      right('<ending number="1" type="stop"/><repeat direction="backward"/>'),
    left('<ending number="2" type="start"/>') +
      bar +
      right('<ending number="2" type="discontinue"/>'),
    `${bar}<sound dacapo="yes"/>`,
  )
  expect(readText(text).playOrder).toEqual([0, 1, 0, 2, 3, 0, 2, 3])
  expect(readText(text).score.notes.length).toBe(4)
  expect(readText(piano(attributes() + bar, bar)).playOrder).toBeUndefined()
})
