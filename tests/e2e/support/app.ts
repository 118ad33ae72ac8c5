import type { Page } from '@playwright/test'
import { parseKey } from '@/music/pitch'
import { installFakeMidi, type FakeMidiOptions } from '../../support/fakeMidiAccess'

/** The keyboard that is plugged in where a test says nothing else. */
export const stage = 'Stage 88'

/** Opens the app at an address such as '#/piece/…', with a MIDI keyboard that the test plays. */
export const openApp = async (
  page: Page,
  { address = '', ...midi }: FakeMidiOptions & { readonly address?: string } = {},
): Promise<void> => {
  await page.addInitScript(installFakeMidi as (options: FakeMidiOptions) => void, {
    inputs: [stage],
    ...midi,
  })
  await page.goto(`/${address}`)
}

export interface Touch {
  /** Milliseconds from one onset to the next. */
  readonly gap?: number
  /** How much of the gap a key is held, 0 to 1. */
  readonly hold?: number
  readonly velocity?: number
  readonly keyboard?: string
}

/**
 * Plays onsets one after another in real time, each key stamped with its planned time:
 * `play(page, 'C4 D4 E4+G4', { gap: 300 })`; '-' is a rest of one gap. Returns when the last key is up.
 */
export const play = async (page: Page, notes: string, touch: Touch = {}): Promise<void> => {
  const { gap = 300, hold = 0.8, velocity = 64, keyboard = stage } = touch
  const messages = notes
    .trim()
    .split(/\s+/)
    .flatMap((word, i) =>
      keysOf(word).flatMap((key) => [
        { bytes: [0x90, key, velocity], at: i * gap },
        { bytes: [0x80, key, 0], at: (i + hold) * gap },
      ]),
    )
    .toSorted((a, b) => a.at - b.at)
  await page.waitForFunction((name) => window.fakeMidi.isOpen(name), keyboard)
  await page.evaluate(([name, all]) => window.fakeMidi.play(name, all), [
    keyboard,
    messages,
  ] as const)
}

const keysOf = (word: string): number[] =>
  word === '-'
    ? []
    : word.split('+').map((name) => {
        const key = parseKey(name)
        if (key === undefined) throw new Error(`no pitch name: ${name}`)
        return key
      })

/** Pulls the cable out of the keyboard, or puts it in. */
export const pull = (page: Page, keyboard = stage): Promise<void> =>
  page.evaluate((name) => window.fakeMidi.pull(name), keyboard)
export const plug = (page: Page, keyboard = stage): Promise<void> =>
  page.evaluate((name) => window.fakeMidi.plug(name), keyboard)
