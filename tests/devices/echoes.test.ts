import { expect, test } from 'vitest'
import { createEchoes } from '@/devices/echoes'
import { ms } from '@/music/units'

test('what was sent comes back once, soon after, and is an echo', () => {
  const { sent, isEcho } = createEchoes()
  sent([0x90, 60, 68], ms(1000))
  expect(isEcho([0x90, 60, 67], ms(1003))).toBe(false)
  expect(isEcho([0x90, 60, 68], ms(1003))).toBe(true)
  // The same once more is the person's own.
  expect(isEcho([0x90, 60, 68], ms(1004))).toBe(false)
})

test('what comes before it is due, or long after, was played', () => {
  const { sent, isEcho } = createEchoes()
  sent([0x90, 60, 68], ms(1000))
  expect(isEcho([0x90, 60, 68], ms(900))).toBe(false)
  expect(isEcho([0x90, 60, 68], ms(1400))).toBe(false)
})
