import { afterEach, expect, test } from 'vitest'
import { explainFault } from '@/engraving/fault'
import { german } from '@/german/german'
import { speak } from '@/text/text'

afterEach(() => speak('en'))

test('a drawing that fails is told with its cause and what to do', () => {
  expect(explainFault({ kind: 'unanswered', seconds: 30 })).toBe(
    'The notation cannot be drawn (no answer within 30 seconds). Playing is still heard; reload the page to try again.',
  )
  expect(explainFault({ kind: 'said', message: 'out of memory' })).toMatch(/\(out of memory\)/)
  speak('de', german)
  expect(explainFault({ kind: 'stopped' })).toMatch(
    /^Die Noten lassen sich nicht zeichnen \(das Programm dafür ist stehen geblieben\)\. /,
  )
})
