import { afterEach, describe, expect, test } from 'vitest'
import { german } from '@/german/german'
import { recordsText } from '@/text/records'
import { studentsText } from '@/text/students'
import { speak } from '@/text/text'
import { folderWords, reminderWords, savedWords, sizeWords } from '@/views/recordWords'

/** By the clock of this machine, as the page shows it. */
const saved = { atEpochMs: new Date(2026, 4, 3, 9, 5).getTime(), repetitions: 10 }

test.each([
  [undefined, 7, 'Not saved as a file so far.'],
  [saved, undefined, 'Saved last on 3 May 2026, 09:05.'],
  [saved, 0, 'Saved last on 3 May 2026, 09:05, nothing since.'],
  [saved, 1, 'Saved last on 3 May 2026, 09:05, 1 repetition since.'],
])('when the record was saved: %#', (copy, since, words) => {
  expect(savedWords(copy, since)).toBe(words)
})

test('the reminder says what is at stake, with and without an older copy', () => {
  expect(reminderWords(undefined, 512)).toMatch(/^512 repetitions are on this machine alone\./)
  expect(reminderWords(saved, 60)).toMatch(/3 May 2026, 09:05; 60 repetitions since then are on/)
})

test.each([
  [0, 'less than 1 MB'],
  [1_500_000, '1.5 MB'],
  [12_345_678, '12 MB'],
  [1_400_000_000, '1.4 GB'],
  [64_000_000_000, '64 GB'],
])('%i bytes are %s', (bytes, words) => {
  expect(sizeWords(bytes)).toBe(words)
})

describe('the folder', () => {
  const at = { name: 'Piano', writtenAtEpochMs: saved.atEpochMs, elsewhere: 0 }
  test.each([
    [{ kind: 'unsupported' }, /lets no page write into a folder/],
    [{ kind: 'none' }, /^Choose a folder/],
    [{ kind: 'ready', ...at }, /^Kept in “Piano”\. Written last on 3 May 2026, 09:05\.$/],
    [{ kind: 'ready', ...at, elsewhere: 2 }, /hold 2 events that are not in the record here/],
    [{ kind: 'asks', name: 'Piano' }, /asked again.*“Piano”\. Nothing is written there yet\.$/],
    [{ kind: 'writing', done: 0, of: 3, ...at }, /“Piano”: month 1 of 3\.$/],
    [{ kind: 'failed', message: 'No room.', ...at }, /^No room\. Written last on/],
    [{ kind: 'failed', message: 'No room.', name: '' }, /^No room\.$/],
  ] as const)('%j', (state, words) => {
    expect(folderWords(state)).toMatch(words)
  })
})

describe('in German', () => {
  afterEach(() => speak('en'))

  test.each([
    [1, 'Zuletzt gesichert am 3. Mai 2026 um 09:05 Uhr, seither 1 Durchgang.'],
    [12345, 'Zuletzt gesichert am 3. Mai 2026 um 09:05 Uhr, seither 12\u202f345 Durchgänge.'],
  ])('%i repetitions since', (since, words) => {
    speak('de', german)
    expect(savedWords(saved, since)).toBe(words)
  })

  test('figures have a decimal comma, and verbs the number of what they tell of', () => {
    speak('de', german)
    expect(sizeWords(1_500_000)).toBe('1,5 MB')
    expect(reminderWords(undefined, 1)).toMatch(/^1 Durchgang steht nur auf diesem Gerät/)
    expect(reminderWords(undefined, 60)).toMatch(/^60 Durchgänge stehen nur auf diesem Gerät/)
    const folder = { kind: 'ready', name: 'Klavier', elsewhere: 1 } as const
    expect(folderWords(folder)).toMatch(/„Klavier“.*1 Ereignis, das .* fehlt; dort bleibt es/)
    expect(folderWords({ ...folder, elsewhere: 2 })).toMatch(/2 Ereignisse, die .* bleiben sie/)
  })

  test('what a file brings is told in the number that it has', () => {
    speak('de', german)
    const one = { events: 1, repetitions: 1, entries: 1 }
    expect(recordsText.preview.newOnes(one)).toBe(
      '1, darunter 1 Durchgang und 1 Eintrag des Notizbuchs',
    )
    expect(recordsText.preview.ofPieces({ fresh: 1, newer: 2, known: 0 })).toBe(
      '1 Stück, neu hier; 2 Stücke, neuer als hier',
    )
    const file = {
      repetitions: 1,
      days: 1,
      pieces: 2,
      span: ['3. Mai 2026', '4. Mai 2026'],
    } as const
    expect(studentsText.incoming.about(file)).toBe(
      '1 Durchgang an 1 Tag, 3. Mai 2026 bis 4. Mai 2026, aus 2 Stücken.',
    )
  })
})
