import type { SavedCopy } from '@/app/copies'
import type { FolderState, Keeping, KeptFolder } from '@/app/copyPorts'
import { dateWords, grouped } from './reviewWords'
import { plural } from '@/text/plural'

/** The sentences on how the record is kept. */

/** '28 November 2026, 18:04' by the clock of this machine. */
export const momentWords = (epochMs: number): string => {
  const at = new Date(epochMs)
  const two = (n: number): string => String(n).padStart(2, '0')
  const day = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`
  return `${dateWords(day)}, ${two(at.getHours())}:${two(at.getMinutes())}`
}

const repetitionWords = (n: number): string =>
  `${grouped(n)} ${n === 1 ? 'repetition' : 'repetitions'}`

/** When the whole record was saved last, and what came since. */
export const savedWords = (saved: SavedCopy | undefined, since: number | undefined): string => {
  if (!saved) return 'Not saved as a file so far.'
  const when = `Saved last on ${momentWords(saved.atEpochMs)}`
  if (since === undefined) return `${when}.`
  return since === 0 ? `${when}, nothing since.` : `${when}, ${repetitionWords(since)} since.`
}

/** Once after a while: quiet, with a reason. */
export const reminderWords = (saved: SavedCopy | undefined, since: number): string =>
  saved
    ? `The record was saved last on ${momentWords(saved.atEpochMs)}; ${repetitionWords(since)} since then are on this machine alone.`
    : `${repetitionWords(since)} are on this machine alone. Save the record as a file now and then, and keep it in another place.`

/** 12345678 -> '12 MB'; by thousands, as disks are sold. */
export const sizeWords = (bytes: number): string => {
  if (bytes < 1e6) return 'less than 1 MB'
  const [size, unit] = bytes < 1e9 ? [bytes / 1e6, 'MB'] : [bytes / 1e9, 'GB']
  return `${size < 10 ? Math.round(size * 10) / 10 : grouped(Math.round(size))} ${unit}`
}

export const keepingWords = ({ words, room }: Keeping): string =>
  room
    ? `${words} All of Passagework takes ${sizeWords(room.usedBytes)} here; there is room for ${sizeWords(room.freeBytes)} more.`
    : words

/** How it stands with the second copy. */
export const folderWords = (state: FolderState): string => {
  switch (state.kind) {
    case 'unsupported':
      return 'This browser lets no page write into a folder. Save the record as a file now and then instead.'
    case 'none':
      return 'Choose a folder, perhaps one that is copied to another disk or machine by itself. After each session what is new is written there: one file for each month, of the same kind as the saved record.'
    case 'asks':
      return `The browser wants to be asked again before this page may write into “${state.name}”. ${writtenWords(state)}`
    case 'ready':
      return `Kept in “${state.name}”. ${writtenWords(state)}`
    case 'writing':
      return `Writing into “${state.name}”: month ${state.done + 1} of ${state.of}.`
    case 'failed':
      return `${state.message} ${state.name === '' ? '' : writtenWords(state)}`.trim()
  }
}

const writtenWords = ({ writtenAtEpochMs, elsewhere = 0 }: KeptFolder): string => {
  const written =
    writtenAtEpochMs === undefined
      ? 'Nothing is written there yet.'
      : `Written last on ${momentWords(writtenAtEpochMs)}.`
  return elsewhere === 0
    ? written
    : `${written} Its files hold ${plural(elsewhere, 'event')} that are not in the record here; they stay there. Take the files in below to have them here too.`
}
