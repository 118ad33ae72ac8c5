import { explainJournalProblem, type JournalProblem } from '@/journal/decode'

/** Why something could not be stored or read. */
export type StorageProblem =
  /** No database at all: private mode, switched off, an odd browser. */
  | { readonly kind: 'unavailable'; readonly message: string }
  /** Another tab holds an older version open. */
  | { readonly kind: 'blocked' }
  /** The database was made by a newer version of the program. */
  | { readonly kind: 'newerVersion' }
  /** Another tab upgrades the database; this one had to let go. */
  | { readonly kind: 'replaced' }
  | { readonly kind: 'quota' }
  /** Two different events with one id: the first is kept. */
  | { readonly kind: 'idTaken'; readonly id: string }
  /** Kept only until the page is closed. */
  | { readonly kind: 'memoryOnly' }
  | { readonly kind: 'failed'; readonly message: string }

/** What an error of the database means. Names: W3C Indexed Database API 3.0 and Web IDL. */
export const problemOf = (error: unknown): StorageProblem => {
  const name = error instanceof Error ? error.name : ''
  const message = error instanceof Error ? error.message : String(error)
  if (name === 'QuotaExceededError') return { kind: 'quota' }
  if (name === 'VersionError') return { kind: 'newerVersion' }
  if (name === 'SecurityError' || name === 'ReferenceError') return { kind: 'unavailable', message }
  return { kind: 'failed', message: message === '' ? name : message }
}

/** One or two plain sentences: what happened, what of the record, what to do. */
export const explainStorageProblem = (problem: StorageProblem): string => {
  switch (problem.kind) {
    case 'unavailable':
      return `This browser offers no database here (${problem.message}), as in a private window. You can practise; the record lasts until the page is closed.`
    case 'blocked':
      return 'Another tab still has an older version of this page open. Close that tab and reload this one; until then the record lasts only until the page is closed.'
    case 'newerVersion':
      return 'The record was written by a newer version of this program and is left as it is. Reload to get the newer version; until then the record lasts only until the page is closed.'
    case 'replaced':
      return 'A newer version of this page was opened in another tab and has taken over the record. Reload this tab; what you play here until then lasts only until the page is closed.'
    case 'quota':
      return 'There is no room left on this disk for the record. Free some space; what is not yet stored is kept until the page is closed, and stored as soon as there is room.'
    case 'idTaken':
      return `The event ${problem.id} is already in the record with another content; the one there was kept.`
    case 'memoryOnly':
      return 'The record lasts only until the page is closed.'
    case 'failed':
      return `The record could not be read or written (${problem.message}). Reload the page; what is not yet stored is kept until then.`
  }
}

/** One or two plain sentences on records that cannot be read; `undefined` when there are none. */
export const explainUnread = (
  unread: readonly { readonly id: string; readonly reason: JournalProblem }[],
): string | undefined => {
  const reasons = [...new Map(unread.map(({ id, reason }) => [id, reason])).values()]
  const newer = reasons.filter(({ kind }) => kind === 'newerVersion').length
  const damaged = reasons.find(({ kind }) => kind !== 'newerVersion')
  const told: string[] = []
  if (newer > 0)
    told.push(
      `${records(newer)} written by a newer version and cannot be read by this one. Reload to get the newer version.`,
    )
  if (damaged)
    told.push(
      `${records(reasons.length - newer)} damaged and cannot be read. ${explainJournalProblem(damaged)} All others are read, and a saved record holds the damaged ones as they stand.`,
    )
  return told.length === 0 ? undefined : [...told, 'Nothing was deleted.'].join(' ')
}

const records = (n: number): string => (n === 1 ? 'One record was' : `${n} records were`)
