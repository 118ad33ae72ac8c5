import { describe, expect, test } from 'vitest'
import { replayTake } from '@/judge/replay'
import { beginJudge, stepJudge } from '@/judge/judge'
import { ms } from '@/music/units'
import { judge, listen, verdicts, writeChunk, writeTake } from './notation'

const settings = { standard: 'notes', forgiveBrushed: false } as const

/** Chunk, played, verdicts. Common practice, no source. */
const table: readonly (readonly [
  title: string,
  chunk: string,
  played: string,
  verdicts: string,
])[] = [
  ['twice with a pause', 'C4 D4 E4', 'C4 D4 E4 800 C4 D4 E4', 'clean clean'],
  ['three times without a pause', 'C4 D4 E4', 'C4 D4 E4 C4 D4 E4 C4 D4 E4', 'clean clean clean'],
  ['the next before the last key is let go', 'C4 D4 E4', 'C4 D4 E4 -250 C4 D4 E4', 'clean clean'],
  [
    'back to the start in the middle',
    'C4 D4 E4 F4 G4',
    'C4 D4 E4 600 C4 D4 E4 F4 G4',
    'brokenOff clean',
  ],
  [
    'back to the start after a wrong key',
    'C4 D4 E4 F4 G4',
    'C4 D#4 600 C4 D4 E4 F4 G4',
    'flawed clean',
  ],
  [
    'back to the start after a wrong key that is the last one written',
    'C4 D4 E4 F4 G4',
    'C4 D4 E4 G4 400 C4 D4 E4 F4 G4',
    'flawed clean',
  ],
  [
    'back to the start without a pause',
    'C4 D4 E4 F4 G4',
    'C4 D4 E4 C4 D4 E4 F4 G4',
    'brokenOff clean',
  ],
  [
    'the first two notes three times, then all',
    'C4 D4 E4 F4',
    'C4 D4 500 C4 D4 500 C4 D4 500 C4 D4 E4 F4',
    'brokenOff brokenOff brokenOff clean',
  ],
  ['unfinished, then silence', 'C4 D4 E4 F4 G4', 'C4 D4 E4 9000', 'brokenOff'],
  [
    'unfinished, silence, and then all',
    'C4 D4 E4 F4 G4',
    'C4 D4 E4 9000 C4 D4 E4 F4 G4',
    'brokenOff clean',
  ],
  ['the last note lacking, then all', 'C4 D4 E4 F4', 'C4 D4 E4 900 C4 D4 E4 F4', 'flawed clean'],
  [
    'the first note lacking after a clean one',
    'C4 D4 E4 F4',
    'C4 D4 E4 F4 900 D4 E4 F4',
    'clean flawed',
  ],
  ['a beginning like the middle', 'C4 D4 E4 F4 C4 D4 E4 G4', 'C4 D4 E4 F4 C4 D4 E4 G4', 'clean'],
  [
    'a beginning like the middle, broken off there',
    'C4 D4 E4 F4 C4 D4 E4 G4',
    'C4 D4 E4 F4 700 C4 D4 E4 F4 C4 D4 E4 G4',
    'brokenOff clean',
  ],
  [
    'a beginning like the end',
    'C4 D4 E4 C4 D4',
    'C4 D4 E4 C4 D4 900 C4 D4 E4 C4 D4',
    'clean clean',
  ],
  [
    'the end is the beginning, without a pause',
    'C4 D4 E4 C4',
    'C4 D4 E4 C4 C4 D4 E4 C4',
    'clean clean',
  ],
  [
    'a single onset, again and again',
    '[C4 E4 G4]',
    '[C4 E4 G4] 700 [C4 E4 G4] 700 [C4 E4]',
    'clean clean flawed',
  ],
  ['two onsets', 'C4 G4', 'C4 G4 800 C4 G4 800 C4 F#4', 'clean clean flawed'],
]

describe('repetitions follow each other as they are played', () => {
  test.each(table)('%s', (_, chunk, played, expected) => {
    expect(verdicts(chunk, played)).toBe(expected)
  })

  test('a hesitation is no end, even three times the gap', () => {
    expect(verdicts('C4 D4 E4 F4', 'C4 D4 1200 E4 F4')).toBe('clean')
  })

  test('silence breaks off after two bars, or four seconds beyond what is written', () => {
    expect(verdicts('C4 D4 E4 F4 G4', 'C4 D4 E4 3000 F4 G4')).toBe('clean')
    expect(verdicts('C4 D4 E4 F4 G4', 'C4 D4 E4 5000 F4 G4')).toMatch(/^brokenOff/)
  })

  test('bounds are the first and the last key that belong to it', () => {
    const [first, second] = listen('C4 D4 E4', 'C4 D4 E4 -200 E4 1000 D#4 D4 E4')
    expect([first?.start, first?.lastOnset]).toEqual([1000, 2000])
    expect([second?.start, second?.lastOnset]).toEqual([3400, 4200])
  })
})

describe('back after a slip', () => {
  const flaws = (chunk: string, played: string): string =>
    (listen(chunk, played)[0]?.flaws ?? []).map((f) => f.kind).join(' ')

  test('a wrong key in its time is wrong, though the same key is written an onset later', () => {
    expect(flaws('C4 D4 E4 F4 G4', 'C4 D4 E4 G4 400 C4 D4 E4 F4 G4')).toMatch(/^wrong/)
  })

  test('at the time of the later onset it is that onset, and the one before is missing', () => {
    expect(flaws('C4 D4 E4 F4 G4', 'C4 D4 E4 400 G4 900 C4 D4 E4 F4 G4')).toBe('missing')
  })

  test('two keys of a chord, one of them the next chord\u2019s: a wrong note, then back', () => {
    const [first] = listen('C4 [D4 G4] [E4 A4]', 'C4 [D4 A4] 900 C4 [D4 G4] [E4 A4]')
    expect(first?.flaws[0]).toMatchObject({
      kind: 'wrong',
      expected: { key: 67 },
      played: { key: 69 },
    })
  })

  test('inside the chunk: one repetition, gone on from there', () => {
    const played = '[C4 E4 A4] B4 A4 [D4 F4 F#4] 1000 A4 [D4 F4 G4] C5'
    expect(verdicts('[C4 E4 A4] B4 A4 [D4 F4 G4] C5', played)).toBe('flawed')
  })
})

describe('keys that begin nothing', () => {
  const strays = (chunk: string, played: string): number =>
    replayTake(writeChunk(chunk), settings, writeTake(played)).findings.filter(
      (f) => f.kind === 'stray',
    ).length

  test('a foreign key between two repetitions is a stray, and no repetition', () => {
    expect(verdicts('C4 D4 E4', 'C4 D4 E4 800 A5 800 C4 D4 E4')).toBe('clean clean')
    expect(strays('C4 D4 E4', 'C4 D4 E4 800 A5 800 C4 D4 E4')).toBe(1)
  })

  test('the first key alone, tried and left, is no repetition', () => {
    expect(verdicts('C4 D4 E4 F4', 'C4 1500 C4 1500 C4 D4 E4 F4')).toBe('clean')
  })

  test('noodling is no repetition', () => {
    expect(verdicts('C4 D4 E4 F4', 'A5 G5 B5 A5 G3 A3 B5 G5 900 C4 D4 E4 F4')).toBe('clean')
    expect(strays('C4 D4 E4 F4', 'A5 G5 B5 A5 G3 A3 B5 G5')).toBe(8)
  })
})

describe('odd ways of going wrong', () => {
  test('a skipped beat: what lacks is named, and the judge is in step again', () => {
    expect(judge('C4 D4 E4 F4 G4 A4 B4', 'C4 D4 G4 A4 B4')).toBe(
      'right right missing missing right right right',
    )
  })

  test('a whole group one key too high, then right again', () => {
    expect(judge('C4 D4 E4 F4 G4 A4 B4 C5', 'C4 D4 F4 F#4 G#4 A4 B4 C5')).toBe(
      'right right wrong wrong wrong right right right',
    )
  })

  test('a run begun on the wrong finger that corrects itself', () => {
    expect(judge('C4 D4 E4 F4 G4', 'D4 E4 300 C4 D4 E4 F4 G4')).toMatch(
      /right right right right right$/,
    )
    expect(verdicts('C4 D4 E4 F4 G4', 'D4 E4 300 C4 D4 E4 F4 G4')).toMatch(/clean$/)
  })

  test('hands half a beat apart are not out of order at notes', () => {
    expect(judge('[,C3 E4] [,D3 F4] [,E3 G4]', 'E4 -200 C3 -200 F4 -200 D3 -200 G4 -200 E3')).toBe(
      'right right right right right right',
    )
  })

  test('no note-offs and a trembling pedal change nothing', () => {
    const chunk = writeChunk('C4 D4 E4')
    const downs = writeTake('C4 D4 E4').events.filter((e) => e.kind === 'down')
    const noise = Array.from({ length: 40 }, (_, i) => ({
      kind: 'pedal' as const,
      pedal: 'sustain' as const,
      value: (i * 37) % 128,
      at: ms(900 + i * 40),
    }))
    const events = [...downs, ...noise].toSorted((a, b) => a.at - b.at)
    const { repetitions } = replayTake(chunk, settings, { events })
    expect(repetitions.map((r) => r.verdict)).toEqual(['clean'])
  })
})

describe('the page hears in time', () => {
  test('the verdict comes after the settling time, without a further key', () => {
    let [state] = stepJudge(
      beginJudge(writeChunk('C4'), settings),
      writeTake('C4').events[0] ?? { kind: 'clock', at: ms(0) },
    )
    const findings = []
    for (let at = 1016; at <= 1700; at += 16) {
      const [next, found] = stepJudge(state, { kind: 'clock', at: ms(at) })
      state = next
      if (found.length > 0) findings.push([at, found.map((f) => f.kind).join(' ')])
    }
    expect(findings).toEqual([[1592, 'ended']])
  })

  test('ended comes before began when the next is played at once', () => {
    const { findings } = replayTake(
      writeChunk('C4 D4 E4'),
      settings,
      writeTake('C4 D4 E4 C4 D4 E4'),
    )
    const order = findings.map((f) => f.kind).filter((k) => k === 'began' || k === 'ended')
    expect(order).toEqual(['began', 'ended', 'began', 'ended'])
  })

  test('a right key is marked right with its own event', () => {
    const [, found] = stepJudge(
      beginJudge(writeChunk('C4 D4'), settings),
      writeTake('C4').events[0] ?? { kind: 'clock', at: ms(0) },
    )
    expect(found.map((f) => (f.kind === 'mark' ? f.mark.kind : f.kind))).toEqual(['began', 'right'])
  })

  test('a lacking note of a chord is not shown as missing while it can still come', () => {
    const { findings } = replayTake(
      writeChunk('[,C3 E4] [,D3 F4] G4'),
      settings,
      writeTake('E4 F4 -380 C3 D3 G4'),
    )
    expect(findings.filter((f) => f.kind === 'mark' && f.mark.kind === 'missing')).toEqual([])
  })
})
