import { expect, test } from 'vitest'
import { describeWhole } from '@/views/hardSpotsWords'

test.each([
  ['as far up as down', 3.08, 1.23, /^As a whole about 3\.1, somewhere between 1\.9 and 4\.3 \(/],
  ['never below nothing', 1, 1.5, /^As a whole about 1\.0, somewhere between 0\.0 and 2\.5 \(/],
  ['of a piece without notes nothing', 0, 0, /^$/],
])(
  'the difficulty of the whole comes with how far it may be off: %s',
  (_, difficulty, uncertainty, words) => {
    expect(describeWhole({ difficulty, uncertainty })).toMatch(words)
  },
)

test('it says what it rests on, and that it is no grade', () => {
  expect(describeWhole({ difficulty: 3, uncertainty: 1 })).toMatch(
    /hard places .* number of notes.* compass.* sharps or flats.*rough.*not a grade/,
  )
})
