import { describe, expect, test } from 'vitest'
import { askToPersist, lookAtKeeping } from '@/storage/persistence'
import {
  explainStorageProblem,
  explainUnread,
  problemOf,
  type StorageProblem,
} from '@/storage/problem'

describe('an error of the database', () => {
  // Names of the Indexed Database API 3.0 and Web IDL.
  test.each([
    ['QuotaExceededError', 'quota'],
    ['VersionError', 'newerVersion'],
    ['SecurityError', 'unavailable'],
    ['AbortError', 'failed'],
    ['UnknownError', 'failed'],
  ])('%s is told as %s', (name, kind) => {
    expect(problemOf(new DOMException('message', name)).kind).toBe(kind)
  })

  test('what is no error at all keeps its text', () => {
    expect(problemOf('odd')).toEqual({ kind: 'failed', message: 'odd' })
  })
})

test.each<[StorageProblem, RegExp]>([
  [{ kind: 'quota' }, /no room left.*Free some space.*as soon as there is room/],
  [{ kind: 'blocked' }, /Another tab.*close that tab.*is stored too/],
  [{ kind: 'moved' }, /is stored.*Reload/],
  [{ kind: 'newerVersion' }, /newer version.*left as it is.*save it as a file, then reload/],
  [{ kind: 'replaced' }, /newer version.*save it as a file, then reload this tab/],
  [
    { kind: 'unavailable', message: 'SecurityError' },
    /SecurityError.*until the page is closed.*save it as a file/,
  ],
  [{ kind: 'memoryOnly' }, /until the page is closed/],
  [{ kind: 'idTaken', id: 'e1' }, /e1.*was kept/],
  [{ kind: 'failed', message: 'disk' }, /disk.*tried again.*before you reload/],
])('$kind says what, and what to do', (problem, sentence) => {
  expect(explainStorageProblem(problem)).toMatch(sentence)
})

describe('how the browser keeps the record', () => {
  const manager = (persisted: boolean, granted: boolean) => ({
    persisted: () => Promise.resolve(persisted),
    persist: () => Promise.resolve(granted),
    estimate: () => Promise.resolve({ usage: 30, quota: 100 }),
  })
  test.each([
    [true, false, true, /until you delete it/],
    [false, true, true, /until you delete it/],
    [false, false, false, /may clear/],
  ])('already %s, answer %s: promised %s', async (persisted, granted, promised, words) => {
    expect(await askToPersist(manager(persisted, granted))).toEqual({
      promised,
      words: expect.stringMatching(words),
      room: { usedBytes: 30, freeBytes: 70 },
    })
  })

  test('is looked at without asking', async () => {
    const persist = () => Promise.reject(new Error('it was asked'))
    expect((await lookAtKeeping({ ...manager(false, true), persist })).promised).toBe(false)
    expect((await lookAtKeeping(manager(true, true))).promised).toBe(true)
  })

  test('without the means to ask, or when asking fails, it is unknown', async () => {
    const failing = { ...manager(false, false), persist: () => Promise.reject(new TypeError('no')) }
    for (const asked of [await askToPersist(undefined), await askToPersist(failing)])
      expect(asked).toEqual({ promised: false, words: expect.stringContaining('does not say') })
  })

  test('the room is left out where the browser does not tell it', async () => {
    const silent = { ...manager(true, true), estimate: () => Promise.resolve({}) }
    expect(await lookAtKeeping(silent)).not.toHaveProperty('room')
  })
})

describe('records that cannot be read', () => {
  const newer = { kind: 'newerVersion', version: 9, known: 2 } as const
  const damaged = { kind: 'wrongShape', path: 'rung', message: 'no number' } as const
  const told = (...reasons: (typeof newer | typeof damaged)[]) =>
    explainUnread(reasons.map((reason, i) => ({ id: `${i}`, reason })))

  test('are none: nothing is told', () => {
    expect(told()).toBeUndefined()
  })

  test.each([
    [[newer], /^One record was written by a newer version.*Reload.*Nothing was deleted\.$/],
    [[newer, newer], /^2 records were written by a newer version/],
    [[damaged], /^One record was damaged.*field rung.*no number.*All others are read/],
    [[newer, damaged, damaged], /newer version.*2 records were damaged/],
  ])('%j', (reasons, sentence) => {
    expect(told(...reasons)).toMatch(sentence)
  })

  test('that were met twice are counted once', () => {
    expect(
      explainUnread([
        { id: 'a', reason: newer },
        { id: 'a', reason: newer },
      ]),
    ).toMatch(/^One/)
  })
})
