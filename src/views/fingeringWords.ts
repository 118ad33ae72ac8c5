import type { CarriedFingers } from '@/app/fingerings'
import type { FingeringVersion } from '@/journal/fingerings'
import type { FingeringOrigin } from '@/journal/words'
import type { Fingers } from '@/music/fingers'
import type { Finger, Hand, Note } from '@/music/music'
import { handWords } from './words'
import { plural } from '@/text/plural'

/** Every word of the section on fingering that is more than a button. */
export const originWords: Readonly<Record<FingeringOrigin, string>> = {
  mine: 'mine',
  teacher: 'my teacher’s',
  edition: 'an edition',
  proposal: 'a proposal',
  file: 'the file',
}

export const howToWrite =
  'Press a note, or go to one with ↓ in the music, then 1 to 5: the digit stands, and the next note of the hand is next. ⌫ takes away, ← and → go on without.'

/** 'mine · from the lesson in May · 24 digits' */
export const describeVersion = ({ origin, remark, fingers }: FingeringVersion): string =>
  [originWords[origin], remark, countDigits(fingers)].filter((part) => part !== '').join(' · ')

export const countDigits = ({ size }: Fingers): string =>
  size === 0 ? 'no digits yet' : plural(size, 'digit')

/** What became of the digits of an older edition: 'Of your 24 digits, 22 stand here; 2 are dropped, …' */
export const describeCarriedFingers = ({ carried, dropped }: CarriedFingers): string => {
  const stand = `${carried} ${carried === 1 ? 'stands' : 'stand'} here`
  const lost = `${dropped} ${dropped === 1 ? 'is' : 'are'} dropped, since the notes are not in this edition`
  return `Of your ${plural(carried + dropped, 'digit')}, ${stand}${dropped > 0 ? `; ${lost}` : ''}.`
}

/** How versions differ, hand by hand: 'it stretches less', 'left hand: it stretches less; right hand: it …'. */
export const joinDifferences = (
  each: readonly { readonly hand: Hand; readonly words: string }[],
): string => {
  const said = each.filter(({ words }) => words !== '')
  const [first] = said
  if (!first || said.every(({ words }) => words === first.words))
    return first ? `it ${first.words}` : ''
  return said.map(({ hand, words }) => `${handWords[hand]}: it ${words}`).join('; ')
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
