import type { SavedCopy } from '@/app/copies'
import type { FolderState, Keeping, KeptFolder } from '@/app/copyPorts'
import { dateWords } from '@/text/dates'
import { grouped, rounded } from '@/text/numbers'
import { recordsText } from '@/text/records'

/** The sentences on how the record is kept. */

/** '28 November 2026, 18:04' by the clock of this machine. */
export const momentWords = (epochMs: number): string => {
  const at = new Date(epochMs)
  return recordsText.moment(dayWords(epochMs), `${two(at.getHours())}:${two(at.getMinutes())}`)
}

/** '28 November 2026' */
export const dayWords = (epochMs: number): string => {
  const at = new Date(epochMs)
  return dateWords(`${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`)
}

const two = (n: number): string => String(n).padStart(2, '0')

/** When the whole record was saved last, and what came since. */
export const savedWords = (saved: SavedCopy | undefined, since: number | undefined): string => {
  const words = recordsText.save
  if (!saved) return words.never
  const when = momentWords(saved.atEpochMs)
  return since === undefined ? words.last(when) : words.since(when, since)
}

/** Once after a while: quiet, with a reason. */
export const reminderWords = (saved: SavedCopy | undefined, since: number): string =>
  saved
    ? recordsText.reminder.again(momentWords(saved.atEpochMs), since)
    : recordsText.reminder.first(since)

/** 12345678 -> '12 MB'; by thousands, as disks are sold. */
export const sizeWords = (bytes: number): string => {
  if (bytes < 1e6) return recordsText.browser.underOne
  const [size, unit] = bytes < 1e9 ? [bytes / 1e6, 'MB'] : [bytes / 1e9, 'GB']
  return `${size < 10 ? rounded(size, 1) : grouped(Math.round(size))} ${unit}`
}

export const keepingWords = ({ words, room }: Keeping): string =>
  room
    ? `${words} ${recordsText.browser.room(sizeWords(room.usedBytes), sizeWords(room.freeBytes))}`
    : words

/** How it stands with the second copy. */
export const folderWords = (state: FolderState): string => {
  const words = recordsText.folder
  switch (state.kind) {
    case 'unsupported':
      return words.unsupported
    case 'none':
      return words.none
    case 'asks':
      return `${words.asks(state.name)} ${writtenWords(state)}`
    case 'ready':
      return `${words.kept(state.name)} ${writtenWords(state)}`
    case 'writing':
      return words.writing(state.name, state.done + 1, state.of)
    case 'failed':
      return `${state.message} ${state.name === '' ? '' : writtenWords(state)}`.trim()
  }
}

const writtenWords = ({ writtenAtEpochMs, elsewhere = 0 }: KeptFolder): string => {
  const words = recordsText.folder
  const written =
    writtenAtEpochMs === undefined ? words.notWritten : words.written(momentWords(writtenAtEpochMs))
  return elsewhere === 0 ? written : `${written} ${words.elsewhere(elsewhere)}`
}
