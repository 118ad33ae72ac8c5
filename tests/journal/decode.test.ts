import fc from 'fast-check'
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { likelyKinds } from '@/coach/diagnose'
import { remedyKinds } from '@/coach/remedyKinds'
import { flawKinds, standards } from '@/judge/flaw'
import { verdicts } from '@/judge/repetition'
import { decodeEvent, explainJournalProblem } from '@/journal/decode'
import { journalVersion } from '@/journal/journal'
import { formatJournal, parseJournal } from '@/journal/lines'
import { decodeTake } from '@/journal/take'
import { upcast, type Upcaster } from '@/journal/upcast'
import * as words from '@/journal/words'
import {
  recordedCauses,
  recordedFlawKinds,
  recordedForms,
  recordedRemedies,
  recordedStandards,
  recordedVerdicts,
} from '@/journal/words'
import { forms } from '@/music/form'
import { ms } from '@/music/units'
import { anyEvent } from '../support/anyEvent'

const frozen = (version: 1 | 2 | 3): string =>
  readFileSync(new URL(`../journals/v${version}.jsonl`, import.meta.url), 'utf8')
const begun = { v: 3, id: 'e1', session: 's1', atEpochMs: 1, kind: 'sessionBegun' }
const fingering = (part: object) => ({ ...begun, kind: 'fingeringWritten', piece: 'p1', ...part })

/** What `decodeEvent` says of it, in one sentence. */
const refusal = (raw: unknown): string => {
  const decoded = decodeEvent(raw)
  return decoded.ok ? 'read' : explainJournalProblem(decoded.reason)
}

describe('an event from outside', () => {
  test('any event comes back from its JSON', () => {
    fc.assert(
      fc.property(anyEvent, (event) => {
        // JSON has no negative zero, and the journal none either.
        const text = JSON.stringify(event)
        const plain: unknown = JSON.parse(text)
        expect(decodeEvent(plain)).toEqual({ ok: true, value: plain })
      }),
    )
  })

  test.each([
    [undefined, 'This is not an event of a journal: it has no version.'],
    ['text', 'This is not an event of a journal: it has no version.'],
    [{ ...begun, v: '1' }, 'This is not an event of a journal: it has no version.'],
    [{ ...begun, v: 0 }, 'There is no journal version 0.'],
  ])('%j is refused: %s', (raw, sentence) => {
    expect(refusal(raw)).toBe(sentence)
  })

  test('a newer version is told and not taken apart', () => {
    expect(decodeEvent({ v: 4, kind: 'somethingNew' })).toEqual({
      ok: false,
      reason: { kind: 'newerVersion', version: 4, known: 3 },
    })
  })

  test.each([
    ['id', { ...begun, id: '' }],
    ['atEpochMs', { ...begun, atEpochMs: Number.NaN }],
    ['session', { ...begun, session: 7 }],
    ['kind', { ...begun, kind: 'applauded' }],
    ['stars', { ...begun, stars: 3 }],
    ['take', repetition({ take: 'no base64!' })],
    ['verdict', repetition({ verdict: 'superb' })],
    ['flaws.0.kind', repetition({ flaws: [{ kind: 'ugly', onset: 0 }] })],
    ['flaws.0.played', repetition({ flaws: [{ kind: 'wrong', onset: 0, played: 128 }] })],
    ['rung', repetition({ rung: 0 })],
    ['text', written({ text: '' })],
    ['text', written({ text: 'a'.repeat(20_001) })],
    ['subject', written({ subject: 'gossip' })],
    ['place.hand', written({ place: { from: '0', to: '1', fromBar: 1, toBar: 1, hand: 'third' } })],
    ['replaces', { ...begun, kind: 'notebookErased', piece: 'p1' }],
    ['fingers.n0k60', fingering({ fingers: { n0k60: '6' } })],
    ['origin', fingering({ origin: 'the cat' })],
    ['fingering', { ...begun, kind: 'fingeringErased', piece: 'p1' }],
    ['decision', { ...begun, kind: 'pieceDecided', piece: 'p1', decision: 'burned' }],
  ])('a wrong field is named: %s', (path, raw) => {
    const decoded = decodeEvent(raw)
    expect(decoded.ok ? undefined : decoded.reason).toMatchObject({ kind: 'wrongShape', path })
  })

  test('never throws on any JSON', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (json) => {
        expect(decodeEvent(json).ok).toBe(false)
      }),
    )
  })
})

describe('the frozen sample of version 3', () => {
  test('is read whole, and written as it stands', () => {
    const { events, unread } = parseJournal(frozen(3))
    expect(unread).toEqual([])
    expect(formatJournal(events)).toBe(frozen(3))
  })

  test('has every kind', () => {
    expect(parseJournal(frozen(3)).events.map((event) => event.kind)).toEqual([
      'sessionBegun',
      'pieceAdded',
      'drillBegun',
      'trialEnded',
      'trialEnded',
      'repetition',
      'repetition',
      'problemNamed',
      'remedyBegun',
      'remedyEnded',
      'problemOutcome',
      'overruled',
      'rungChanged',
      'exerciseDone',
      'secure',
      'notebookWritten',
      'notebookWritten',
      'notebookWritten',
      'notebookErased',
      'pieceDecided',
      'fingeringWritten',
      'fingeringWritten',
      'fingeringChosen',
      'fingeringErased',
    ])
  })
})

describe('the frozen sample of version 2', () => {
  test('is read whole, and means the same in version 3', () => {
    const { events, unread } = parseJournal(frozen(2))
    expect(unread).toEqual([])
    expect(formatJournal(events)).toBe(frozen(2).replaceAll('{"v":2,', '{"v":3,'))
  })
})

describe('the frozen sample of version 1', () => {
  const raw = frozen(1)
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Readonly<Record<string, unknown>>)

  test('is read whole as what it is today: each drill was as written, all else is the same', () => {
    const { events, unread } = parseJournal(frozen(1))
    expect(unread).toEqual([])
    expect(events).toEqual(
      raw.map((event) =>
        event['kind'] === 'drillBegun' ? { ...event, v: 3, form: 'asWritten' } : { ...event, v: 3 },
      ),
    )
  })

  test('has every kind of its version', () => {
    expect(raw.map((event) => event['kind'])).toEqual([
      'sessionBegun',
      'pieceAdded',
      'drillBegun',
      'repetition',
      'repetition',
      'overruled',
      'rungChanged',
      'secure',
    ])
  })

  test('gives its take back: C4 pressed at 0 and left at 240 ms, E4 after, the pedal down', () => {
    const take = parseJournal(frozen(1)).events.find((e) => e.kind === 'repetition')?.take ?? ''
    const decoded = decodeTake(take, ms(0))
    expect(decoded.ok ? decoded.value.events : []).toEqual([
      { kind: 'down', key: 60, velocity: 64, at: 0 },
      { kind: 'up', key: 60, at: 240 },
      { kind: 'pedal', pedal: 'sustain', value: 127, at: 250.5 },
      { kind: 'down', key: 64, velocity: 71, at: 500.1 },
      { kind: 'up', key: 64, at: 740 },
    ])
  })
})

describe('versions', () => {
  const steps: ReadonlyMap<number, Upcaster> = new Map([
    [1, (event) => ({ ...event, tempo: event['speed'] })],
    [2, ({ speed: _speed, ...event }) => event],
  ])

  test('an old event is lifted version by version', () => {
    expect(upcast({ v: 1, speed: 60 }, 1, 3, steps)).toEqual({ v: 3, tempo: 60 })
    expect(upcast({ v: 2, speed: 60 }, 2, 3, steps)).toEqual({ v: 3 })
  })

  test('a missing step is told', () => {
    expect(upcast({ v: 0 }, 0, 3, steps)).toBeUndefined()
  })

  test('the words of a version are frozen: one more needs a version more, with an upcaster and a sample', () => {
    const frozenWords: unknown = JSON.parse(
      readFileSync(new URL('../journals/words.json', import.meta.url), 'utf8'),
    )
    expect({ version: journalVersion, words: { ...words } }).toEqual(frozenWords)
  })

  test('the words of the present version are those of the coach and of the forms', () => {
    expect(new Set(recordedCauses)).toEqual(new Set(likelyKinds))
    expect(new Set(recordedRemedies)).toEqual(new Set(remedyKinds))
    expect(new Set(recordedForms)).toEqual(new Set(forms))
  })

  test('the words of the present version are those of the judge', () => {
    expect(recordedFlawKinds).toEqual(flawKinds)
    expect(recordedVerdicts).toEqual(verdicts)
    expect(recordedStandards).toEqual(standards)
  })
})

function repetition(changed: Readonly<Record<string, unknown>>): unknown {
  return {
    ...begun,
    kind: 'repetition',
    drill: 'd1',
    piece: 'p1',
    chunk: 'p1:0-2:right',
    rung: 72,
    standard: 'flow',
    forgiveBrushed: false,
    verdict: 'clean',
    tookMs: 900,
    flaws: [],
    figures: {},
    take: '',
    ...changed,
  }
}

function written(changed: Readonly<Record<string, unknown>>): unknown {
  const entry = { ...begun, kind: 'notebookWritten', piece: 'p1', subject: 'idea', text: 'Slower' }
  return { ...entry, ...changed }
}
