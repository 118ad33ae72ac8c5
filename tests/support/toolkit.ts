import type { VerovioToolkit } from 'verovio/esm'
import { openToolkit } from '@/engraving/toolkit'

/** The engraver in Node. */
export const openEngraverHere = (): Promise<VerovioToolkit> =>
  openToolkit(() => import('verovio/wasm'))
