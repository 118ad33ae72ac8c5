import type { Ms } from '@/music/units'
import type { Judge } from './judge'

/** The same judge, everything heard kept, that from now on expects a click at another time. */
export const anchorClick = (judge: Judge, click: Ms): Judge => ({
  ...judge,
  settings: { ...judge.settings, click },
})
