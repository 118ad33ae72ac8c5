import { engravingText } from '@/text/engraving'

/** Why nothing can be drawn. */
export type EngraverFault =
  | { readonly kind: 'unloaded' | 'stopped' | 'closed' }
  /** It hung for so many seconds. */
  | { readonly kind: 'unanswered'; readonly seconds: number }
  /** `message` is what the browser or the engraver itself says. */
  | { readonly kind: 'said'; readonly message: string }

/** One sentence for the person: what is wrong, and what to do. */
export const explainFault = (fault: EngraverFault): string => engravingText.undrawn(causeOf(fault))

const causeOf = (fault: EngraverFault): string => {
  switch (fault.kind) {
    case 'unloaded':
    case 'stopped':
    case 'closed':
      return engravingText[fault.kind]
    case 'unanswered':
      return engravingText.unanswered(fault.seconds)
    case 'said':
      return fault.message
  }
}
