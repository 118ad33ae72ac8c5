import type { Page } from '@playwright/test'
import { drawn, fiveNotes, journal, openDrill, play, repetition, shown, stage } from './support/app'
import { expect, test } from './support/test'

declare global {
  interface Window {
    /** What the page has made, held so that a test can break it. */
    made: { readonly audio: AudioContext[]; readonly workers: Worker[] }
    /** As a browser treats a tab that is not in sight. */
    hide: () => void
    bringBack: () => void
  }
}

/** Holds the audio contexts and workers that the page makes; they stay what they are. */
const holdWhatIsMade = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    window.made = { audio: [], workers: [] }
    window.AudioContext = new Proxy(AudioContext, {
      construct: (Made, args) => {
        const made: AudioContext = Reflect.construct(Made, args)
        window.made.audio.push(made)
        return made
      },
    })
    window.Worker = new Proxy(Worker, {
      construct: (Made, args) => {
        const made: Worker = Reflect.construct(Made, args)
        window.made.workers.push(made)
        return made
      },
    })
  })

/**
 * A tab out of sight is not drawn: no animation frame comes. Its clock comes once a second at most
 * (common practice of browsers; HTML leaves it to them). What MIDI brings comes at once all the same.
 */
const mayBeHidden = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    let hidden = false
    let frames: FrameRequestCallback[] = []
    const [frame, interval] = [requestAnimationFrame, setInterval]
    window.requestAnimationFrame = (run) => {
      if (!hidden) return frame(run)
      return frames.push(run)
    }
    const rarely = (run: () => void): (() => void) => {
      let last = 0
      return () => {
        if (hidden && performance.now() - last < 1000) return
        last = performance.now()
        run()
      }
    }
    window.setInterval = ((run: () => void, after?: number) =>
      interval(rarely(run), after)) as typeof setInterval
    Object.defineProperty(document, 'visibilityState', {
      get: () => (hidden ? 'hidden' : 'visible'),
    })
    Object.defineProperty(document, 'hidden', { get: () => hidden })
    const turn = (to: boolean): void => {
      hidden = to
      document.dispatchEvent(new Event('visibilitychange'))
    }
    window.hide = () => turn(true)
    window.bringBack = () => {
      turn(false)
      for (const run of frames) frame(run)
      frames = []
    }
  })

test('a tab that is hidden in mid-drill goes on counting, and shows it all when it is back', async ({
  page,
}) => {
  await mayBeHidden(page)
  await openDrill(page)
  await drawn(page)
  await repetition(page)
  await play(page, 'C5 D5', { gap: 150 })
  await page.evaluate(() => window.hide())
  await play(page, 'E5 F5 G5', { gap: 150 })
  await expect(shown(page).streak).toHaveAttribute('data-streak', '2')
  await play(page, 'C5 D5 E5 F#5 G5', { gap: 150 })
  await expect(shown(page).message).toHaveText('Flawed: F♯5 in place of F5.')
  await expect(shown(page).flaws).toHaveCount(0)
  await page.evaluate(() => window.bringBack())
  await expect(shown(page).streak).toHaveAttribute('data-streak', '0')
  await expect(shown(page).flaws).toHaveCount(1)
  const judged = (await journal(page)).flatMap((e) => (e.kind === 'repetition' ? [e.verdict] : []))
  expect(judged).toEqual(['clean', 'clean', 'flawed'])
})

test('another audio device, or none: the metronome is off, the page says so, and the drill goes on', async ({
  page,
}) => {
  await holdWhatIsMade(page)
  await openDrill(page)
  const metronome = page.getByRole('button', { name: 'Metronome' })
  await metronome.click()
  await expect(metronome).toHaveAttribute('aria-pressed', 'true')
  await play(page, 'C5 D5', { gap: 150 })
  await page.evaluate(() => window.made.audio[0]?.suspend())
  await expect(metronome).toHaveAttribute('aria-pressed', 'false')
  await expect(shown(page).message).toContainText('The sound stopped')
  await repetition(page)
  await expect(shown(page).streak).toHaveAttribute('data-streak', '1')
  await page.keyboard.press('Space')
  await expect(metronome).toHaveAttribute('aria-pressed', 'true')
  await expect.poll(() => page.evaluate(() => window.made.audio[0]?.state)).toBe('running')
})

test('another program takes the keyboard in mid-drill: the head says so, the other one plays on, and it comes back by itself', async ({
  page,
}) => {
  await openDrill(page, undefined, { inputs: [stage, 'Small 25'] })
  await drawn(page)
  await repetition(page)
  await play(page, 'C5 D5', { gap: 150 })
  await page.evaluate((name) => window.fakeMidi.occupy(name), stage)
  const { instrument, message, streak } = shown(page)
  await expect(message).toContainText('Another program has taken the keyboard')
  await expect(instrument.locator('summary')).toHaveText(`Small 25 (${stage} in use)`)
  await repetition(page, fiveNotes.notes, { keyboard: 'Small 25' })
  await expect(streak).toHaveAttribute('data-streak', '2')
  await page.evaluate((name) => window.fakeMidi.free(name), stage)
  await expect(instrument).toHaveText(`${stage}, Small 25`)
  await repetition(page)
  await expect(streak).toHaveAttribute('data-streak', '3')
})

test('an engraver that crashes is replaced, and the drill goes on meanwhile', async ({ page }) => {
  await holdWhatIsMade(page)
  await openDrill(page)
  await drawn(page)
  const crashed = await page.evaluate(() => {
    for (const worker of window.made.workers) {
      worker.terminate()
      worker.dispatchEvent(new ErrorEvent('error', { message: 'out of memory' }))
    }
    return window.made.workers.length
  })
  await repetition(page)
  await expect(shown(page).streak).toHaveAttribute('data-streak', '1')
  const sheet = page.locator('.notation .sheet')
  const before = await sheet.boundingBox()
  await page.setViewportSize({ width: 1100, height: 780 })
  await expect.poll(() => page.evaluate(() => window.made.workers.length)).toBe(crashed + 1)
  await expect.poll(async () => (await sheet.boundingBox())?.width).not.toBe(before?.width)
})

test.describe('without an engraver', () => {
  test.use({ expectedErrors: [/ERR_FAILED/, /verovio/] })

  test('the page says so, and what is played is judged all the same', async ({ page }) => {
    await page.route(/verovio/, (route) => route.abort())
    await openDrill(page)
    await expect(page.locator('.notation[data-drawing=failed]')).toContainText(/cannot be drawn/)
    await repetition(page, 'C5 D5 E5 F#5 G5')
    await expect(shown(page).message).toHaveText('Flawed: F♯5 in place of F5.')
    await repetition(page, fiveNotes.notes)
    await expect(shown(page).streak).toHaveAttribute('data-streak', '1')
  })
})
