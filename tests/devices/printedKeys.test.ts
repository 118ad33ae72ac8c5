import { expect, test } from 'vitest'
import { createPrintedKeys } from '@/devices/printedKeys'
import { createKeyTarget } from '../support/keyboardEvents'

/** What stands on five keys of which the layouts differ. */
const codes = ['KeyY', 'KeyZ', 'Semicolon', 'Quote', 'BracketLeft']
const settle = (): Promise<void> => new Promise((done) => setTimeout(done, 0))

/** As browsers give it: small letters (Keyboard Map, WICG draft). */
const tells = (pairs: readonly (readonly [string, string])[]) => ({
  getLayoutMap: () => Promise.resolve(new Map(pairs)),
})

const setUp = (language: string, teller?: ReturnType<typeof tells>) => {
  const computer = createKeyTarget()
  const printed = createPrintedKeys(computer.target, language, teller)
  return { computer, all: () => codes.map(printed.on).join(' ') }
}

// The layouts T1 (DIN 2137) and that of the United States (ANSI INCITS 154): from memory.
test('where the browser tells nothing, keys are named as is usual in the language', () => {
  expect(setUp('en-GB').all()).toBe('Y Z ; ’ [')
  expect(setUp('de-AT').all()).toBe('Z Y Ö Ä Ü')
  expect(setUp('de-AT').all()).not.toBe(setUp('fr').all())
})

test('what the browser tells of the layout comes first', async () => {
  const layout = [
    ['KeyY', 'z'],
    ['KeyZ', 'y'],
    ['Semicolon', 'ö'],
    ['Quote', "'"],
  ] as const
  const { all } = setUp('en-US', tells(layout))
  await settle()
  expect(all()).toBe('Z Y Ö ’ [')
})

test('a browser that refuses to tell is no fault', async () => {
  const { all } = setUp('en', { getLayoutMap: () => Promise.reject(new Error('not in a frame')) })
  await settle()
  expect(all()).toBe('Y Z ; ’ [')
})

test('a key that is pressed tells what it says; with Shift or AltGr it says something else', () => {
  const { computer, all } = setUp('en')
  computer.down('KeyY', 1, { key: 'z' })
  computer.down('BracketLeft', 2, { key: 'ü' })
  computer.down('Quote', 3, { key: '@', altKey: true })
  computer.down('Semicolon', 4, { key: 'Dead' })
  expect(all()).toBe('Z Z ; ’ Ü')
})
