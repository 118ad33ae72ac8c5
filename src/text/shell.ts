import { catalogue } from './text'

/** The head of every page, and the messages that stand under it. */
export const shellText = catalogue('shell', {
  pages: 'Pages',
  pieces: 'Pieces',
  today: 'Today',
  session: 'Session',
  review: 'Review',
  options: 'Options',
  opening: 'Opening …',
  recordTrouble: 'Trouble with the record; you can practise on.',
  saveRecord: 'Save the record as a file',
  lost: {
    title: 'Not here',
    how: <N>(pieces: (word: string) => N) => [
      'This address names a piece that is not on this machine, or a place that it does not have. Go to the ',
      pieces('pieces'),
      ' and choose it there, or bring its file in again: the record of your practice is kept and will find it.',
    ],
  },
  /** What is read for a screen. */
  adding: 'Adding up the days …',
  noPage: (why: string) => `This page cannot be shown. ${why}`,
  again: 'Try again',
  kept: {
    all: 'All of Passagework is kept on this machine: it works without a network.',
    newer: 'A newer version of Passagework is here.',
    takeNewer: 'Take it now',
    failed: (detail: string) =>
      `Passagework could not be kept for use without a network (${detail}). Reload the page to try again.`,
    /** The detail where some file did not come. */
    incomplete: 'not all files came',
  },
  licences: {
    title: 'Licences',
    own: 'Passagework itself is free under the MIT licence. It is made with the work of others, which comes with it under these licences.',
    reading: 'Reading …',
    unread: (detail: string) =>
      `The licences cannot be read: they come with the built page. (${detail})`,
    /** As the licences ask to be named where the work is used. */
    credits: [
      'Piano sound: Salamander Grand Piano by Alexander Holm, licensed under CC BY 3.0 (https://creativecommons.org/licenses/by/3.0/), cut to a few seconds.',
      'Notation: engraved by Verovio (LGPL-3.0-or-later), in a file of its own that may be replaced.',
      'Text face: Source Serif 4 (SIL Open Font License 1.1).',
    ],
  },
})

export type ShellText = typeof shellText
