import type { Difference } from '@/fingering/differences'
import type { FingeringVersion } from '@/journal/fingerings'
import type { Fingers } from '@/music/fingers'
import type { Finger, Hand, Note } from '@/music/music'
import { fingeringText, tellDifference } from '@/text/fingering'
import { handWords } from './words'

/** 'mine · from the lesson in May · 24 digits' */
export const describeVersion = ({ origin, remark, fingers }: FingeringVersion): string =>
  [fingeringText.origins[origin], remark, countDigits(fingers)]
    .filter((part) => part !== '')
    .join(' · ')

export const countDigits = ({ size }: Fingers): string => fingeringText.digits(size)

/** How a fingering differs in each hand that it has. */
export type OfHands = readonly { readonly hand: Hand; readonly difference: Difference }[]

/** 'it stretches less' where it is so in each hand, else 'left hand: it stretches less; right hand: it …'. */
export const describeDifferences = (ofHands: OfHands): string => {
  const said = ofHands.map(({ hand, difference }) => ({ hand, words: tellDifference(difference) }))
  const [first] = said
  if (!first) return ''
  return said.every(({ words }) => words === first.words)
    ? fingeringText.differ(first.words)
    : said.map(({ hand, words }) => fingeringText.handDiffers(handWords[hand], words)).join('; ')
}

/** So many onsets of a proposal are read at a glance; the music shows the rest. */
const mostOnsets = 32

/** The digits of one hand in the order of the notes, a chord from its lowest note: '1 2 3 1+3+5'. */
export const writeDigits = (
  notes: readonly Note[],
  hand: Hand,
  fingers: ReadonlyMap<Note['id'], Finger>,
): string => {
  const onsets: { readonly start: number; digits: string }[] = []
  for (const { id, start, grace } of notes.filter((note) => note.hand === hand)) {
    const digit = `${fingers.get(id) ?? '–'}`
    const last = onsets.at(-1)
    if (last?.start === start && !grace) last.digits += `+${digit}`
    else onsets.push({ start, digits: digit })
  }
  const shown = onsets.slice(0, mostOnsets).map(({ digits }) => digits)
  return [...shown, ...(onsets.length > mostOnsets ? ['…'] : [])].join(' ')
}
