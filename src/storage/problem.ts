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
  /** What kept the database from being opened has passed: what was played here meanwhile is in it now. */
  | { readonly kind: 'moved' }
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
      return `This browser offers no database here (${problem.message}), as in a private window. You can practise; the record lasts until the page is closed, so save it as a file before that.`
    case 'blocked':
      return 'Another tab still has an older version of this page open and holds the record back. You can practise: close that tab, and what you play here is stored too.'
    case 'newerVersion':
      return 'The record was written by a newer version of this program and is left as it is. What you play here lasts only until the page is closed: save it as a file, then reload to get the newer version and take it in there.'
    case 'replaced':
      return 'A newer version of this page was opened in another tab and has taken over the record. What you play here from now on lasts only until the page is closed: save it as a file, then reload this tab and take it in.'
    case 'quota':
      return 'There is no room left on this disk for the record. Free some space, or save the record as a file: what is not yet stored is kept until the page is closed, and stored as soon as there is room.'
    case 'moved':
      return 'The record can be stored again, and what you played here is stored. Reload this page to see your pieces and the earlier record.'
    case 'idTaken':
      return `The event ${problem.id} is already in the record with another content; the one there was kept.`
    case 'memoryOnly':
      return 'The record lasts only until the page is closed.'
    case 'failed':
      return `The record could not be read or written (${problem.message}). It is tried again every few seconds; what is not yet stored is kept until the page is closed. Save it as a file before you reload.`
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
