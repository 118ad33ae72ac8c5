import { expect, test } from 'vitest'
import { writeMei } from '@/engraving/mei'
import { cutStretch } from '@/engraving/stretch'
import { key, tick } from '@/music/units'
import { resolution, scoreFrom } from './notation'

test('grace notes before one main note are written in the order in which they are played', () => {
  const note = (k: number, start: number) => ({
    key: key(k),
    start: tick(start),
    length: tick(resolution),
    hand: 'right' as const,
  })
  const score = scoreFrom([note(72, 0), note(76, 0), note(74, 0)])
  const graces = new Map([
    [76, 1],
    [74, 0],
  ])
  const notes = score.notes.map((n) => {
    const graceRank = graces.get(n.key)
    return graceRank === undefined ? n : { ...n, grace: true as const, graceRank }
  })
  const stretch = cutStretch({ ...score, notes }, tick(0), score.end, 'right')
  const written = stretch ? writeMei(stretch).mei : ''
  expect([...written.matchAll(/xml:id="(n0k\d+)"/g)].map(([, id]) => id)).toEqual([
    'n0k76',
    'n0k74',
    'n0k72',
  ])
})
