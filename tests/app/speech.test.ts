import { afterEach, describe, expect, test } from 'vitest'
import { describeRemedy, speechFor } from '@/app/speech'
import type { Reason } from '@/coach/reasons'
import { remedyKinds } from '@/coach/remedyKinds'
import { german } from '@/german/german'
import { describeFlaw } from '@/judge/describeFlaw'
import { flawKinds } from '@/judge/flaw'
import { replayTake } from '@/judge/replay'
import { key, tempo } from '@/music/units'
import { coachText } from '@/text/coach'
import { drillText } from '@/text/drill'
import { speak } from '@/text/text'
import { writeTake } from '../judge/notation'
import { writeChunk } from '../support/chunks'

afterEach(() => speak('en'))
const inGerman = (): void => speak('de', german)

/** In 6/8 and three flats: dotted quarters are counted, and black keys are flats. */
const speech = speechFor({
  time: { beats: 6, beatType: 8 },
  signature: { fifths: -3, mode: 'major' },
})
const [slow, fast] = [tempo(90), tempo(96)]

/** What is said of one repetition at Eb4 F4 G4 Ab4. */
const verdictOn = (played: string): string | undefined => {
  const settings = { standard: 'notes', forgiveBrushed: false } as const
  const heard = replayTake(writeChunk('Eb4 F4 G4 Ab4'), settings, writeTake(played, 400))
  return heard.repetitions[0] && speech.describe(heard.repetitions[0])
}

const reasons: readonly (readonly [Reason, english: string, german: string])[] = [
  [
    { kind: 'streak', streak: 5, from: slow, to: fast },
    'Five clean in a row: up from 60 to 64.',
    'Fünf fehlerfrei hintereinander: von 60 hinauf auf 64.',
  ],
  [
    {
      kind: 'tooFast',
      evidence: { kind: 'flawedOfLast', flawed: 3, of: 5 },
      from: fast,
      to: slow,
    },
    'Three of the last five were flawed: down from 64 to 60.',
    'Drei der letzten fünf waren fehlerhaft: von 64 hinunter auf 60.',
  ],
  [
    { kind: 'tooBig', evidence: { kind: 'lowShare', clean: 1, of: 8 }, at: slow },
    'One clean of the last eight, under one half at 60, the slowest tempo here: a smaller group will go better.',
    'Von den letzten acht war einer fehlerfrei, weniger als die Hälfte, bei 60, dem langsamsten Tempo hier: Eine kleinere Gruppe wird besser gehen.',
  ],
  [
    {
      kind: 'tooFast',
      evidence: { kind: 'lowShare', clean: 0, of: 8 },
      from: fast,
      to: slow,
    },
    'No clean of the last eight, under one half: down from 64 to 60.',
    'Von den letzten acht war keiner fehlerfrei, weniger als die Hälfte: von 64 hinunter auf 60.',
  ],
  [
    {
      kind: 'sameFlaw',
      problem: { flaw: 'wrong', place: 3, written: key(63), played: key(64), times: 2 },
    },
    'E4 in place of E♭4 at onset 4, twice: solve it before repeating it.',
    'Zweimal bei Anschlag 4: E4 statt Es4. Erst lösen, dann wiederholen.',
  ],
  [
    { kind: 'sameFlaw', problem: { flaw: 'spread', place: 0, times: 14 } },
    'Chord not together at onset 1, fourteen times: solve it before repeating it.',
    '14-mal bei Anschlag 1: Akkord nicht zusammen. Erst lösen, dann wiederholen.',
  ],
  [
    { kind: 'longAtPlace', repetitions: 1, minutes: 1 },
    'One repetition in one minute at this place: another place now, this one again later.',
    'Ein Durchgang in einer Minute an dieser Stelle: jetzt eine andere, diese später wieder.',
  ],
  [
    { kind: 'longAtPlace', repetitions: 60, minutes: 7 },
    'Sixty repetitions in seven minutes at this place: another place now, this one again later.',
    '60 Durchgänge in sieben Minuten an dieser Stelle: jetzt eine andere, diese später wieder.',
  ],
  [
    { kind: 'person', from: fast, to: slow },
    'Your choice: down from 64 to 60.',
    'Ihre Wahl: von 64 hinunter auf 60.',
  ],
]

test.each(reasons)('$kind', (reason, english, inOther) => {
  expect(speech.explain(reason)).toBe(english)
  inGerman()
  expect(speech.explain(reason)).toBe(inOther)
})

test.each([
  ['Eb4 F4 G4 Ab4', 'Clean.', 'Fehlerfrei.'],
  ['Eb4 F4 G4 A4', 'Flawed: A4 in place of A♭4.', 'Fehlerhaft: A4 statt As4.'],
  ['Eb4 F4 . Ab4', 'Flawed: G4 missing.', 'Fehlerhaft: G4 fehlt.'],
  [
    'E4 E4 G4 A4',
    'Flawed: E4 in place of E♭4, E4 in place of F4, and 1 more.',
    'Fehlerhaft: E4 statt Es4, E4 statt F4 und 1 weiterer Fehler.',
  ],
  [
    'E4 E4 A4 Ab4 A4',
    'Flawed: E4 in place of E♭4, E4 in place of F4, and 2 more.',
    'Fehlerhaft: E4 statt Es4, E4 statt F4 und 2 weitere Fehler.',
  ],
])('a verdict on %s', (played, english, inOther) => {
  expect(verdictOn(played)).toBe(english)
  inGerman()
  expect(verdictOn(played)).toBe(inOther)
})

describe.each([
  ['English', () => speak('en')],
  ['German', inGerman],
])('in %s', (_, speakIt) => {
  test('each flaw has words of its own, whatever is known of it', () => {
    speakIt()
    for (const keys of [[], ['Es4'], ['Es4', 'A4']])
      expect(new Set(flawKinds.map((kind) => describeFlaw(kind, ...keys))).size).toBe(
        flawKinds.length,
      )
    expect(flawKinds.map((kind) => describeFlaw(kind)).join(' ')).not.toMatch(/undefined/)
  })

  test('each remedy is told in sentences of its own', () => {
    speakIt()
    const told = remedyKinds.flatMap((kind) =>
      (['right', 'left'] as const).map((hand) => describeRemedy({ kind, hand })),
    )
    expect(new Set(told).size).toBe(remedyKinds.length + 1)
    expect(told.filter((text) => !/^\p{Lu}.*\.$/u.test(text))).toEqual([])
  })
})

test('a repetition, a bar and a strain are one or several', () => {
  inGerman()
  expect([drillText.toWorkOn([3], false), drillText.toWorkOn([3, 5], true)]).toEqual([
    'Daran weiterarbeiten: Takt 3.',
    'Daran weiterarbeiten: Takte 3, 5 und andere.',
  ])
  const { octaves, trills, stretches } = drillText.strains
  expect(drillText.cautionAgainst([octaves, trills, stretches])).toMatch(
    /^Oktaven, Triller und weite Griffe ermüden die Hand/,
  )
  expect(coachText.likely.shortLeap).toBe('Der Sprung ist zu kurz.')
})
