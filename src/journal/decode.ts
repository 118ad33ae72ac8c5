import * as v from 'valibot'
import { failed, ok, type Result } from '@/music/result'
import { storageText } from '@/text/storage'
import { journalVersion, type JournalEvent } from './journal'
import { eventSchema } from './schema'
import { upcast, upcasters, versionOf } from './upcast'

/** Why something is no journal event. */
export type JournalProblem =
  | { readonly kind: 'notJson'; readonly message: string }
  | { readonly kind: 'notAnEvent' }
  | { readonly kind: 'newerVersion'; readonly version: number; readonly known: number }
  | { readonly kind: 'unknownVersion'; readonly version: number }
  /** `path` is the field: 'flaws.0.kind'. */
  | { readonly kind: 'wrongShape'; readonly path: string; readonly message: string }

/** Reads an event from outside, of this version or an older one. */
export const decodeEvent = (raw: unknown): Result<JournalEvent, JournalProblem> => {
  const version = versionOf(raw)
  if (version === undefined) return failed({ kind: 'notAnEvent' })
  if (version > journalVersion)
    return failed({ kind: 'newerVersion', version, known: journalVersion })
  const present = upcast(raw, version, journalVersion, upcasters)
  if (present === undefined) return failed({ kind: 'unknownVersion', version })
  const parsed = v.safeParse(eventSchema, present, { abortEarly: true })
  if (parsed.success) return ok(parsed.output)
  const [issue] = parsed.issues
  const path = v.getDotPath(issue) ?? ''
  return failed({ kind: 'wrongShape', path, message: issue.message })
}

export const explainJournalProblem = (problem: JournalProblem): string => {
  const { line } = storageText
  switch (problem.kind) {
    case 'notJson':
      return line.notJson(problem.message)
    case 'notAnEvent':
      return line.notAnEvent
    case 'newerVersion':
      return line.newerVersion(problem.version, problem.known)
    case 'unknownVersion':
      return line.unknownVersion(problem.version)
    case 'wrongShape':
      return problem.path === ''
        ? line.wrongEvent(problem.message)
        : line.wrongField(problem.path, problem.message)
  }
}
