import type { Page } from '@playwright/test'

/**
 * What of a screen cannot be done, or not be seen, with the keyboard alone: each of its buttons, links
 * and fields is reached by Tab and then shows a focus ring; its main action has a key, and every key that
 * is printed on a button stands in the list that `?` opens. The focus is left where it was.
 */
export const keyboardFaults = async (page: Page): Promise<readonly string[]> => {
  const count = await page.evaluate(watchFocus)
  // Fields of a date or a number take more than one press.
  for (let i = 0; i < count + 4; i++) await page.keyboard.press('Tab')
  const unreached = await page.evaluate(unreachedFaults)
  return [...unreached, ...(await listFaults(page))]
}

declare global {
  interface Window {
    watched?: {
      readonly before: Element | null
      readonly all: ReadonlySet<Element>
      readonly ringed: Set<Element>
      readonly hear: () => void
    }
  }
}

/** Notes whatever gets the focus from now on; tells how many elements should. */
const watchFocus = (): number => {
  const reachable = 'a[href], button, summary, input, select, textarea, [tabindex="0"]'
  const over = document.querySelector('dialog[open]')
  const radios = new Set<string>()
  const all = [...(over ?? document).querySelectorAll<HTMLElement>(reachable)].filter((element) => {
    if (!element.checkVisibility({ visibilityProperty: true }) || element.tabIndex < 0) return false
    if (element.matches(':disabled') || element.closest('[inert]')) return false
    if (!(element instanceof HTMLInputElement) || element.type !== 'radio') return true
    // Of a group of radio buttons one is reached by Tab, the others by the arrows.
    const isFirst = !radios.has(element.name)
    radios.add(element.name)
    return isFirst && !document.querySelector(`[name="${element.name}"]:checked:not(:scope)`)
  })
  const ringed = new Set<Element>()
  const hear = (): void => {
    const focused = document.activeElement
    // The ring may stand on what holds a box to tick.
    for (const element of [focused, focused?.closest('label')]) {
      if (!element || !focused) continue
      const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(element)
      const isSeen =
        (outlineStyle !== 'none' && parseFloat(outlineWidth) > 0) || boxShadow !== 'none'
      if (isSeen) ringed.add(focused)
    }
  }
  const before = document.activeElement
  window.watched = { before, all: new Set(all), ringed, hear }
  document.addEventListener('focusin', hear)
  if (before instanceof HTMLElement && !over) before.blur()
  return all.length
}

const unreachedFaults = (): string[] => {
  const { watched } = window
  if (!watched) return ['nothing was watched']
  const { before, all, ringed, hear } = watched
  document.removeEventListener('focusin', hear)
  if (before instanceof HTMLElement && before !== document.body) before.focus()
  else if (document.activeElement instanceof HTMLElement) document.activeElement.blur()
  return [...all]
    .filter((element) => !ringed.has(element))
    .map((element) => `not reached by Tab with a ring: ${element.outerHTML.slice(0, 120)}`)
}

/** `?` opens the list, and closes it again. */
const listFaults = async (page: Page): Promise<readonly string[]> => {
  if ((await page.locator('dialog[open]').count()) > 0) return []
  const printed = await page
    .locator('main :is(button, a) kbd')
    .evaluateAll((all) => all.filter((key) => key.checkVisibility()).map((key) => key.textContent))
  const bare = await page
    .locator('main .primary:not(:has(kbd))')
    .evaluateAll((all) =>
      all.filter((each) => each.checkVisibility()).map((each) => each.textContent),
    )
  await page.keyboard.press('?')
  const listed = await page
    .locator('dialog[open] th kbd')
    .evaluateAll((all) => all.map((key) => key.textContent))
  await page.keyboard.press('?')
  return [
    ...bare.map((words) => `a main action without a key: ${words}`),
    ...(listed.length === 0 ? ['? opens no list'] : []),
    ...printed.filter((key) => !listed.includes(key)).map((key) => `not in the list: ${key}`),
  ]
}
