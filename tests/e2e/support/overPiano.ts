import type { Page } from '@playwright/test'

/** Each figure in hertz and samples of 48 kHz. */
const rate = 48_000
/** 30 ms: a click is over, a piano note has its full attack. */
const window = 1440

/**
 * How far a click lies above piano notes struck together with it, in a third of an octave around
 * `hertz`, decibels. `gain`: of the notes against the click.
 */
export const clickOverPiano = (
  page: Page,
  click: Float32Array,
  hertz: number,
  notes: readonly string[],
  gain: number,
): Promise<number> =>
  page.evaluate(
    async ([click, hertz, notes, gain, rate, window]) => {
      const context = new OfflineAudioContext(1, rate, rate)
      const together = new Float32Array(window)
      for (const url of notes) {
        const bytes = await (await fetch(url)).arrayBuffer()
        const heard = (await context.decodeAudioData(bytes)).getChannelData(0)
        const attack = heard.findIndex((value) => Math.abs(value) > 0.01)
        for (let i = 0; i < window; i++)
          together[i] = (together[i] ?? 0) + gain * (heard[attack + i] ?? 0)
      }
      /** Power of the Fourier terms within a third of an octave, under Hann's window. */
      const power = (sound: ArrayLike<number>): number => {
        const step = rate / window
        let sum = 0
        for (
          let k = Math.ceil(hertz / 2 ** (1 / 6) / step);
          k * step <= hertz * 2 ** (1 / 6);
          k++
        ) {
          let [re, im] = [0, 0]
          for (let i = 0; i < window; i++) {
            const angle = (2 * Math.PI * i) / window
            const value = (sound[i] ?? 0) * (0.5 - 0.5 * Math.cos(angle))
            re += value * Math.cos(k * angle)
            im += value * Math.sin(k * angle)
          }
          sum += re * re + im * im
        }
        return sum
      }
      return 10 * Math.log10(power(click) / power(together))
    },
    [[...click], hertz, notes, gain, rate, window] as const,
  )
