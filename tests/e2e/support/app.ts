import { expect, type Locator, type Page } from '@playwright/test'
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { parseKey } from '@/music/pitch'
import { readPiece } from '@/score/readPiece'
import type { Standard } from '@/judge/flaw'
import type { JournalEvent } from '@/journal/journal'
import { installFakeMidi, type FakeMidiOptions } from '../../support/fakeMidiAccess'

/** The keyboard that is plugged in where a test says nothing else. */
export const stage = 'Stage 88'

export interface Opening extends FakeMidiOptions {
  readonly address?: string
  /** Where the app is served; the browsers of the tests know it. */
  readonly origin?: string
}

/** Opens the app at an address such as '#/piece/…', with a MIDI keyboard that the test plays. */
export const openApp = async (
  page: Page,
  { address = '', origin = '', ...midi }: Opening = {},
): Promise<void> => {
  await page.addInitScript(installFakeMidi as (options: FakeMidiOptions) => void, {
    inputs: [stage],
    ...midi,
  })
  await page.goto(`${origin}/${address}`)
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
  await heard(page, keyboard)
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

/** The piece whose page opens first. */
export const firstPiece = 'Morning at the Mill'
/** The first five notes of its bar 9, right hand: C5 to G5; small enough for many repetitions. */
export const fiveNotes = { place: '32-34/right', notes: 'C5 D5 E5 F5 G5' } as const

/** A fresh profile in a drill at a place of the first piece, without a trial for its start tempo. Gives the address. */
export const openDrill = async (
  page: Page,
  place: string = fiveNotes.place,
  opening: Omit<Opening, 'address'> = {},
): Promise<string> => {
  const address = `#/practice/${idOf('morning-at-the-mill.mid')}/${place}`
  await openApp(page, { address: '#/taptest', ...opening })
  await page.getByRole('heading', { name: 'Tap test' }).waitFor()
  await withoutTrial(page)
  await goTo(page, address)
  await page.locator('.practice').waitFor()
  return address
}

/** The first drill of a chunk begins at once, not with a trial for its start tempo. */
export const withoutTrial = async (page: Page): Promise<void> => {
  const options = page.getByText('Options', { exact: true })
  await options.click()
  await page.getByRole('checkbox', { name: 'Find the start tempo' }).uncheck()
  await options.click()
}

/** The piece of a sample file, as the address names it. */
export const idOf = (fileName: string): string => {
  const path = fileURLToPath(new URL(`../../../sample-midi/${fileName}`, import.meta.url))
  const piece = readPiece(readFileSync(path), fileName)
  if (!piece.ok) throw new Error(`${fileName} cannot be read: ${piece.reason.kind}`)
  return piece.value.score.id
}

export const goTo = (page: Page, address: string): Promise<void> =>
  page.evaluate((hash) => {
    window.location.hash = hash
  }, address)

/** Waits for the notation to stand on the page. */
export const drawn = (page: Page): Promise<void> =>
  page.locator('.notation[data-drawing=drawn] svg .note').first().waitFor()

/** What the practice screen shows. */
export const shown = (page: Page) => ({
  message: page.getByRole('status'),
  streak: page.locator('.tray'),
  rung: page.locator('.scale'),
  strokes: page.locator('.strokes [data-verdict]'),
  right: page.locator('.pencil-right'),
  flaws: page.locator('.pencil-flaw'),
  pressed: page.locator('.strip .down'),
  instrument: page.locator('.instrument'),
})

/** Waits until the app has opened the keyboard, so that no key is lost. */
export const heard = (page: Page, keyboard = stage): Promise<unknown> =>
  page.waitForFunction((name) => window.fakeMidi.isOpen(name), keyboard)

/** How strict the judge is; `notes` judges keys and order alone, at whatever time they come. */
export const chooseStandard = async (page: Page, standard: Standard): Promise<void> => {
  const options = page.getByText('Options', { exact: true })
  await options.click()
  await page.getByRole('combobox', { name: 'Judge' }).selectOption(standard)
  await options.click()
}

/** Plays one repetition and waits for its verdict; the next can begin at once. */
export const repetition = async (
  page: Page,
  notes: string = fiveNotes.notes,
  touch: Touch = {},
): Promise<void> => {
  const { strokes } = shown(page)
  const before = await strokes.count()
  await play(page, notes, { gap: 100, ...touch })
  await page.waitForFunction(
    (n) => document.querySelectorAll('.strokes [data-verdict]').length > n,
    before,
  )
  await expect(strokes).toHaveCount(before + 1)
}

/**
 * Acts on one after another, as hands do that play what the fake keyboard cannot: each begins 300 ms
 * after the one before, or later on a busy machine, so only the standard `notes` can judge it.
 */
export const inTime = async <Each>(
  all: Iterable<Each>,
  act: (each: Each) => Promise<void>,
): Promise<void> => {
  const begin = performance.now()
  let place = 0
  for (const each of all) {
    const wait = begin + place++ * 300 - performance.now()
    if (wait > 0) await new Promise((resolve) => setTimeout(resolve, wait))
    await act(each)
  }
}

/** Presses keys of the computer's keyboard, as 'ASDF'. */
export const type = (page: Page, letters: string): Promise<void> =>
  inTime(letters, (letter) => page.keyboard.press(`Key${letter}`, { delay: 120 }))

/** The verdicts of the strokes, in order. */
export const verdicts = (strokes: Locator): Promise<(string | null)[]> =>
  strokes.evaluateAll((all) => all.map((stroke) => stroke.getAttribute('data-verdict')))

/** Every record in the browser's own database, in the order of time. */
export const journal = (page: Page): Promise<readonly JournalEvent[]> =>
  page.evaluate(
    () =>
      new Promise<JournalEvent[]>((resolve, reject) => {
        const opening = indexedDB.open('passagework')
        opening.onerror = () => reject(new Error('the database does not open'))
        opening.onsuccess = () => {
          const all = opening.result.transaction('events').objectStore('events').getAll()
          all.onerror = () => reject(new Error('the records cannot be read'))
          all.onsuccess = () => {
            opening.result.close()
            resolve(all.result.toSorted((a, b) => a.atEpochMs - b.atEpochMs))
          }
        }
      }),
  )
