import { fingerHand, type FingeringSettings, type HandFingering } from '@/fingering/fingering'
import type { Finger, Hand, Note, Score } from '@/music/music'
import { isBlackKey } from '@/music/pitch'
import { key, noteId, tick, type NoteId } from '@/music/units'
import { writeScore } from '../music/writeScore'

/** Single notes in quarters. */
export const lineOf = (keys: readonly number[], hand: Hand = 'right'): Note[] =>
  keys.map((k, i) => ({
    id: noteId(`n${i}k${k}`),
    key: key(k),
    start: tick(i * 480),
    length: tick(480),
    hand,
    handFrom: 'file',
    barIndex: 0,
  }))

export const toFinger = (digit: string | number): Finger => {
  const finger = ([1, 2, 3, 4, 5] as const).find((f) => f === Number(digit))
  if (!finger) throw new Error(`no finger: ${digit}`)
  return finger
}

/** '123' on the first three notes; a dot leaves a note open. */
export const fix = (notes: readonly Note[], digits: string): Map<NoteId, Finger> =>
  new Map(
    notes.flatMap((note, i) => {
      const digit = digits[i] ?? '.'
      return digit === '.' ? [] : [[note.id, toFinger(digit)] as const]
    }),
  )

export const fingerNotes = (
  notes: readonly Note[],
  settings: Partial<FingeringSettings> = {},
): HandFingering => fingerHand(notes, { hand: 'right', ticksPerQuarter: 480, ...settings })

/** What these digits cost on these single notes. */
export const costOf = (keys: readonly number[], digits: string, hand: Hand = 'right'): number => {
  const notes = lineOf(keys, hand)
  return fingerNotes(notes, { hand, fixed: fix(notes, digits), count: 1 }).best?.cost ?? NaN
}

export const digitsOf = (notes: readonly { readonly finger: Finger }[]): string =>
  notes.map(({ finger }) => finger).join('')

/** The best digits of one hand's line in the notation of `writeScore`, from low keys to high: '1 135 2'. */
export const finger = (line: string, settings: Partial<FingeringSettings> = {}): string => {
  const hand = settings.hand ?? 'right'
  const score = writeScore({ [hand]: line })
  return showDigits(score, fingerNotes(score.notes, { ...settings, hand }))
}

export const showDigits = ({ notes }: Score, { best }: HandFingering): string => {
  const fingers = new Map(best?.notes.map((each) => [each.id, each.finger]))
  const onsets = new Map<string, string>()
  for (const note of notes) {
    const place = `${note.start}${note.grace ? 'g' : ''}`
    onsets.set(place, (onsets.get(place) ?? '') + (fingers.get(note.id) ?? '-'))
  }
  return [...onsets.values()].join(' ')
}

/** The mirror image about D, which keeps white and black keys: C4 E4 -> E4 C4. */
export const mirrored = (k: number): number => 124 - k

if (isBlackKey(key(61)) !== isBlackKey(key(mirrored(61)))) throw new Error('D is the mirror')
