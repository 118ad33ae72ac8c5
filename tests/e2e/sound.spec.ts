import type { Page } from '@playwright/test'
import { makeClick, secondMode, timbres } from '@/sound/clickSound'
import { gainOf } from '@/sound/samples'
import { openDrill, repetition, shown } from './support/app'
import { clickOverPiano } from './support/overPiano'
import { expect, test } from './support/test'

declare global {
  interface Window {
    /** The audio contexts that the page has made. */
    audio: AudioContext[]
  }
}

/** Remembers each audio context of the page, which stays what it is. */
const watchAudio = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    window.audio = []
    window.AudioContext = new Proxy(AudioContext, {
      construct: (Made, args) => {
        const made: AudioContext = Reflect.construct(Made, args)
        window.audio.push(made)
        return made
      },
    })
  })
const audioStates = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => window.audio.map((context) => context.state))

test('the metronome starts by a click and sounds, a drill with it is judged and follows the tempo, and the space bar stops it; no request leaves the page’s origin', async ({
  page,
  baseURL,
}) => {
  const asked: string[] = []
  page.on('request', (request) => asked.push(request.url()))
  await watchAudio(page)
  await openDrill(page)
  expect(await audioStates(page)).toEqual([])
  const metronome = page.getByRole('button', { name: 'Metronome' })
  await metronome.click()
  await expect(metronome).toHaveAttribute('aria-pressed', 'true')
  await expect.poll(() => audioStates(page)).toEqual(['running'])
  const time = () => page.evaluate(() => window.audio[0]?.currentTime ?? 0)
  const begin = await time()
  await expect.poll(time).toBeGreaterThan(begin + 0.2)
  await repetition(page)
  await expect(shown(page).streak).toHaveAttribute('data-streak', '1')
  await page.keyboard.press('ArrowUp')
  await expect(shown(page).rung).toHaveAttribute('data-rung', '54')
  await repetition(page)
  await expect(shown(page).streak).toHaveAttribute('data-streak', '1')
  await expect(metronome).toHaveAttribute('aria-pressed', 'true')
  await page.keyboard.press('Space')
  await expect(metronome).toHaveAttribute('aria-pressed', 'false')
  await repetition(page, 'C5 D5 E5 F#5 G5')
  await page.keyboard.press('Escape')
  await expect(page.locator('.share')).toBeVisible()
  expect(asked.length).toBeGreaterThan(3)
  const foreign = asked.filter(
    (url) => !/^(data|blob):/.test(url) && !url.startsWith(`${baseURL}/`),
  )
  expect(foreign).toEqual([])
})

test('“Hear it” fetches its samples from the page’s own origin, plays the chunk and ends; the clicks cut through it', async ({
  page,
  baseURL,
}) => {
  await watchAudio(page)
  await openDrill(page)
  const samples: string[] = []
  page.on('response', (response) => {
    if (/audio|octet|ogg|mpeg|mp3/.test(response.headers()['content-type'] ?? ''))
      samples.push(response.url())
  })
  const hear = page.getByRole('button', { name: 'Hear it' })
  await hear.click()
  await expect(hear).toHaveAttribute('aria-pressed', 'true')
  await expect.poll(() => samples.length).toBeGreaterThan(2)
  expect(samples.filter((url) => !url.startsWith(`${baseURL}/`))).toEqual([])
  await expect.poll(() => audioStates(page)).toEqual(['running'])
  // A tone is heard as soon as it comes up to what else sounds in its critical band, about a third of an
  // octave (Zwicker and Fastl, Psychoacoustics, ch. 4, from memory): with twice that amplitude it cuts
  // through. A click has two tones; the lower may meet a partial of what is played.
  const forte = gainOf(112) * 0.7
  const notes = [...new Set(samples)]
  for (const accent of ['strong', 'medium', 'weak'] as const) {
    const click = makeClick(accent, 48_000)
    const over = await Promise.all(
      [1, secondMode].map((mode) =>
        clickOverPiano(page, click, mode * timbres[accent].hertz, notes, forte),
      ),
    )
    expect(Math.max(...over), accent).toBeGreaterThan(6)
  }
  // Five eighths at 52 quarters a minute: 2.9 seconds.
  await expect(hear).toHaveAttribute('aria-pressed', 'false', { timeout: 15_000 })
})
