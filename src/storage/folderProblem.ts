import { recordsText } from '@/text/records'

/** Why the folder could not be written, and what to do. Names: File System Standard (WHATWG) and Web IDL. */
export const explainFolderProblem = (error: unknown): string => {
  const { problems } = recordsText.folder
  switch (error instanceof DOMException ? error.name : '') {
    case 'NotFoundError':
      return problems.absent
    case 'NotAllowedError':
    case 'SecurityError':
      return problems.refused
    case 'QuotaExceededError':
      return problems.full
    case 'NoModificationAllowedError':
      return problems.held
    default:
      return problems.other(error instanceof Error ? error.message : String(error))
  }
}
