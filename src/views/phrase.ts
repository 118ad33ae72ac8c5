import { createElement, Fragment, type ReactNode } from 'react'

/**
 * A sentence with something in it that is more than text, such as a key's name: the words of each
 * language put it where it belongs there. `phrase(drillText.goOnWith(<kbd>Space</kbd>))`, where
 * `goOnWith: (key) => ['Go on with ', key, '.']`.
 */
export const phrase = (parts: readonly ReactNode[]): ReactNode =>
  createElement(Fragment, undefined, ...parts)
