/** Why the folder could not be written, and what to do. Names: File System Standard (WHATWG) and Web IDL. */
export const explainFolderProblem = (error: unknown): string => {
  const message = error instanceof Error ? error.message : String(error)
  switch (error instanceof DOMException ? error.name : '') {
    case 'NotFoundError':
      return 'The folder is not there: it was moved, renamed or removed, or its disk is not plugged in. Bring it back and write again, or choose another folder. The record in the browser is not touched.'
    case 'NotAllowedError':
    case 'SecurityError':
      return 'The browser does not let this page write into the folder. Choose it again and allow it. The record in the browser is not touched.'
    case 'QuotaExceededError':
      return 'There is no room left on the disk of the folder. Free some space and write again. The file there is as it was before.'
    case 'NoModificationAllowedError':
      return 'Another program or tab holds the file in the folder. Close it there and write again. The file is as it was before.'
    default:
      return `The folder could not be written: ${message} Write again; if that does not help, choose the folder again. The record in the browser is not touched.`
  }
}
