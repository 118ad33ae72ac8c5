import axe from 'axe-core'
import type { Page } from '@playwright/test'

/** All rules, or those alone that look at colours. */
export const violations = async (
  page: Page,
  rules: 'all' | 'colours' = 'all',
): Promise<string[]> => {
  await page.evaluate(axe.source)
  return page.evaluate(async (which) => {
    const run = (window as unknown as { axe: typeof axe }).axe.run
    const { violations: found } = await run(document, {
      resultTypes: ['violations'],
      ...(which === 'colours' ? { runOnly: ['color-contrast', 'link-in-text-block'] } : {}),
    })
    return found.flatMap(({ id, help, nodes }) =>
      nodes.map(
        (node) => `${id}: ${help}: ${node.html.slice(0, 120)} ${node.any[0]?.message ?? ''}`,
      ),
    )
  }, rules)
}
