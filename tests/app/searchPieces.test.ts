import { expect, test } from 'vitest'
import type { Listed } from '@/app/library'
import { searchPieces } from '@/app/searchPieces'
import { pieceId } from '@/music/units'

const piece = (title: string, composer: string, fileName: string): Listed => ({
  id: pieceId(title),
  title,
  ...(composer === '' ? {} : { composer }),
  fileName,
  from: 'file',
})

const shelf = [
  piece('Étude for a Cold Morning', 'Åse Nørby', 'etude.mxl'),
  piece('Straßenlied', '', 'lied.mid'),
  piece('Little Stair', 'A. Nobody', 'little-stair.mid'),
]

test.each([
  ['', 3],
  ['   ', 3],
  ['etude', 1],
  ['ÉTUDE', 1],
  ['e\u0301tude', 1],
  ['norby', 1],
  ['ase morning', 1],
  ['morning ase', 1],
  ['strassen', 1],
  ['STRASSEN', 1],
  ['.mid', 2],
  ['nobody stair', 1],
  ['nobody lied', 0],
  ['nocturne', 0],
])('“%s” finds %i of three', (wanted, n) => {
  expect(searchPieces(shelf, wanted)).toHaveLength(n)
})
