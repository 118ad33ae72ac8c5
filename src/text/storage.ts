import { catalogue } from './text'

/** '1': 'One record was', 2: '2 records were' */
const records = (n: number): string => (n === 1 ? 'One record was' : `${n} records were`)

/** What the database answers, and what is wrong with a line of a record. */
export const storageText = catalogue('storage', {
  /** Why something could not be stored or read: what happened, what of the record, what to do. */
  problems: {
    unavailable: (message: string) =>
      `This browser offers no database here (${message}), as in a private window. You can practise; the record lasts until the page is closed, so save it as a file before that.`,
    blocked:
      'Another tab still has an older version of this page open and holds the record back. You can practise: close that tab, and what you play here is stored too.',
    newerVersion:
      'The record was written by a newer version of this program and is left as it is. What you play here lasts only until the page is closed: save it as a file, then reload to get the newer version and take it in there.',
    replaced:
      'A newer version of this page was opened in another tab and has taken over the record. What you play here from now on lasts only until the page is closed: save it as a file, then reload this tab and take it in.',
    quota:
      'There is no room left on this disk for the record. Free some space, or save the record as a file: what is not yet stored is kept until the page is closed, and stored as soon as there is room.',
    moved:
      'The record can be stored again, and what you played here is stored. Reload this page to see your pieces and the earlier record.',
    idTaken: (id: string) =>
      `The event ${id} is already in the record with another content; the one there was kept.`,
    memoryOnly: 'The record lasts only until the page is closed.',
    failed: (message: string) =>
      `The record could not be read or written (${message}). It is tried again every few seconds; what is not yet stored is kept until the page is closed. Save it as a file before you reload.`,
  },
  /** Stands in `failed` above. */
  closed: 'it is closed',
  unread: {
    newer: (n: number) =>
      `${records(n)} written by a newer version and cannot be read by this one. Reload to get the newer version.`,
    damaged: (n: number, why: string) =>
      `${records(n)} damaged and cannot be read. ${why} All others are read, and a saved record holds the damaged ones as they stand.`,
    nothingDeleted: 'Nothing was deleted.',
  },
  /** What is wrong with a line of a record. `message`: the reader’s own, in English. */
  line: {
    notJson: (message: string) => `This is not JSON: ${message}.`,
    notAnEvent: 'This is not an event of a journal: it has no version.',
    newerVersion: (version: number, known: number) =>
      `This was written by a newer version of the program (journal version ${version}; this one reads up to ${known}). Update the program to read it; nothing was changed.`,
    unknownVersion: (version: number) => `There is no journal version ${version}.`,
    wrongEvent: (message: string) => `This is not an event of a journal: ${message}.`,
    wrongField: (path: string, message: string) =>
      `The field ${path} is not as it must be: ${message}.`,
  },
  /** What stands for `message` there. */
  shapes: {
    unreadable: 'unreadable',
    empty: 'must not be empty',
    digits: 'must be digits from 1 to 5',
    fraction: "must be a fraction like '3_2'",
    base64: 'must be base64',
    tooLarge: 'stands for more than 32 MB',
    damagedBlock: 'the packed record is damaged',
  },
  /** Whether the browser promises to keep the record. */
  keeping: {
    unknown: 'The browser does not say whether it keeps the record for good.',
    promised: 'The browser keeps the record until you delete it.',
    notPromised: 'The browser may clear the record when the disk gets full.',
  },
})

export type StorageText = typeof storageText
