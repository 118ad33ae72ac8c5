import { expect, test } from 'vitest'
import { mergeDevices } from '@/devices/mergeDevices'
import { createScreenKeys } from '@/devices/screenKeys'
import type { KeyEvent } from '@/music/keyEvent'
import { key } from '@/music/units'
import { inShort } from '../support/soundStream'

const setUp = () => {
  const keys = createScreenKeys()
  const heard: KeyEvent[] = []
  keys.listen((event) => heard.push(event))
  return { keys, heard }
}

test('several fingers on glass press several keys at once', () => {
  const { keys, heard } = setUp()
  keys.press(key(60), 1, 11)
  keys.press(key(64), 2, 12)
  keys.release(3, 11)
  keys.release(4, 12)
  expect(inShort(heard)).toBe('down60@1 down64@2 up60@3 up64@4')
})

test('a finger that slides to another key lifts the first', () => {
  const { keys, heard } = setUp()
  keys.press(key(60), 1, 11)
  keys.press(key(60), 2, 11)
  keys.press(key(62), 3, 11)
  keys.release(4, 11)
  expect(inShort(heard)).toBe('down60@1 up60@3 down62@3 up62@4')
})

test('a key under two fingers goes up with the second', () => {
  const { keys, heard } = setUp()
  keys.press(key(60), 1, 11)
  keys.press(key(60), 2, 12)
  keys.release(3, 11)
  keys.release(4, 12)
  expect(inShort(heard)).toBe('down60@1 up60@4')
})

test('a release of a pointer that pressed nothing is nothing; all can be released at once', () => {
  const { keys, heard } = setUp()
  keys.release(1, 99)
  keys.press(key(60), 2, 11)
  keys.press(key(62), 2, 12)
  keys.releaseAll(5)
  expect(inShort(heard)).toBe('down60@2 down62@2 up60@5 up62@5')
})

test('merged, two devices are one stream, and a key that both hold is down once', () => {
  const [left, right] = [createScreenKeys(), createScreenKeys()]
  const heard: KeyEvent[] = []
  const stop = mergeDevices([left, right]).listen((event) => heard.push(event))
  left.press(key(60), 1, 1)
  right.press(key(60), 2, 1)
  right.press(key(67), 3, 2)
  left.release(4, 1)
  right.release(5, 1)
  stop()
  right.release(6, 2)
  expect(inShort(heard)).toBe('down60@1 down67@3 up60@5 up67@5')
})
