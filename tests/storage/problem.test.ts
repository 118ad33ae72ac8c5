import { describe, expect, test } from 'vitest'
import { askToPersist, explainPersistence } from '@/storage/persistence'
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
  [{ kind: 'quota' }, /no room left.*Free some space/],
  [{ kind: 'blocked' }, /Another tab.*Close that tab and reload/],
  [{ kind: 'newerVersion' }, /newer version.*left as it is/],
  [{ kind: 'replaced' }, /newer version.*Reload this tab/],
  [{ kind: 'unavailable', message: 'SecurityError' }, /SecurityError.*until the page is closed/],
  [{ kind: 'memoryOnly' }, /until the page is closed/],
  [{ kind: 'idTaken', id: 'e1' }, /e1.*was kept/],
  [{ kind: 'failed', message: 'disk' }, /disk.*Reload/],
])('$kind says what, and what to do', (problem, sentence) => {
  expect(explainStorageProblem(problem)).toMatch(sentence)
})

describe('asking the browser to keep the record', () => {
  const manager = (persisted: boolean, granted: boolean) => ({
    persisted: () => Promise.resolve(persisted),
    persist: () => Promise.resolve(granted),
  })
  test.each([
    [true, false, 'kept'],
    [false, true, 'kept'],
    [false, false, 'notPromised'],
  ])('already %s, answer %s: %s', async (persisted, granted, outcome) => {
    expect(await askToPersist(manager(persisted, granted))).toBe(outcome)
  })

  test('without the means to ask, or when asking fails, it is unknown', async () => {
    const failing = { ...manager(false, false), persist: () => Promise.reject(new TypeError('no')) }
    expect(await askToPersist(undefined)).toBe('unknown')
    expect(await askToPersist(failing)).toBe('unknown')
    expect(explainPersistence('unknown')).toContain('does not say')
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
