import { catalogue } from './text'

/** Why the notation cannot be drawn. */
export const engravingText = catalogue('engraving', {
  undrawn: (cause: string) =>
    `The notation cannot be drawn (${cause}). Playing is still heard; reload the page to try again.`,
  unloaded: 'it cannot be loaded',
  stopped: 'it stopped',
  closed: 'the page was closed',
  unanswered: (seconds: number) => `no answer within ${seconds} seconds`,
})

export type EngravingText = typeof engravingText
