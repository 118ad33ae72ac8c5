import { explainJournalProblem, type JournalProblem } from '@/journal/decode'
import { storageText } from '@/text/storage'

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
  const { problems } = storageText
  switch (problem.kind) {
    case 'unavailable':
    case 'failed':
      return problems[problem.kind](problem.message)
    case 'idTaken':
      return problems.idTaken(problem.id)
    case 'blocked':
    case 'newerVersion':
    case 'replaced':
    case 'quota':
    case 'moved':
    case 'memoryOnly':
      return problems[problem.kind]
  }
}

/** One or two plain sentences on records that cannot be read; `undefined` when there are none. */
export const explainUnread = (
  unread: readonly { readonly id: string; readonly reason: JournalProblem }[],
): string | undefined => {
  const reasons = [...new Map(unread.map(({ id, reason }) => [id, reason])).values()]
  const newer = reasons.filter(({ kind }) => kind === 'newerVersion').length
  const damaged = reasons.find(({ kind }) => kind !== 'newerVersion')
  const words = storageText.unread
  const told = [
    ...(newer > 0 ? [words.newer(newer)] : []),
    ...(damaged ? [words.damaged(reasons.length - newer, explainJournalProblem(damaged))] : []),
  ]
  return told.length === 0 ? undefined : [...told, words.nothingDeleted].join(' ')
}
