import { openDrill, repetition, shown, stage } from './support/app'
import { expect, test } from './support/test'

test('"hear it" sounds on the instrument that is chosen, its echo is not judged, and the metronome clicks as is wished', async ({
  page,
}) => {
  await openDrill(page, undefined, { outputs: [stage], looped: [stage] })
  const options = page.getByText('Options', { exact: true })
  await options.click()
  await page.getByRole('combobox', { name: '“Hear it” sounds on' }).selectOption(stage)
  await expect(page.getByText('never judged against it')).toBeVisible()
  await options.click()
  const sent = () => page.evaluate((name) => window.fakeMidi.sent(name), stage)
  const struck = async () => (await sent()).filter(({ bytes: [status] }) => status === 0x90)

  const hear = page.getByRole('button', { name: 'Hear it' })
  await page.keyboard.press('Enter')
  await expect(hear).toHaveAttribute('aria-pressed', 'true')
  await expect(hear).toHaveAttribute('aria-pressed', 'false')
  expect(await struck()).toHaveLength(5)
  const { strokes, right, message } = shown(page)
  await expect(strokes).toHaveCount(0)
  await expect(right).toHaveCount(0)
  await expect(message).toContainText('Play when you are ready')
  // The person's own keys are heard as ever.
  await repetition(page)

  // Stopped in the middle: all notes off is the last that is sent.
  await page.keyboard.press('Enter')
  await expect.poll(async () => (await struck()).length).toBeGreaterThan(5)
  await page.keyboard.press('Enter')
  await expect.poll(async () => (await sent()).at(-1)?.bytes).toEqual([0xb0, 123, 0])

  const metronome = page.getByRole('button', { name: 'Metronome' })
  await page.keyboard.press('4')
  await expect(metronome).toContainText('eighths')
  await page.keyboard.press('5')
  await expect(metronome).toContainText('two bars of clicks, two silent')
})
