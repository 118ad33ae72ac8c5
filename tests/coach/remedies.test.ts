import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { stepCoach, coachRepetition, beginCoach, type Coach } from '@/coach/coach'
import { diagnose, likelyKinds, type Diagnosis } from '@/coach/diagnose'
import type { Command } from '@/coach/messages'
import type { CoachFlaw } from '@/coach/problems'
import type { Problem } from '@/coach/reasons'
import { beginRemedy, offerRemedies, remedyExercise, type Remedy } from '@/coach/remedies'
import { remedyKinds } from '@/coach/remedyKinds'
import { writeVariant } from '@/exercises/variants'
import { recordedRemedies } from '@/journal/words'
import { replayTake } from '@/judge/replay'
import { cutChunk, type Chunk } from '@/music/chunk'
import type { HandChoice, Score } from '@/music/music'
import { key, ms, tempo, tick, type Tempo } from '@/music/units'
import { writeScore } from '../music/writeScore'
import { writeTake } from '../judge/notation'
import { inShort, sentences, settings } from './drill'

const score = writeScore({
  right: 'C5:1/2 D5:1/2 E5:1/2 F5:1/2 G5:1/2 E6:1/2 D6:1/2 C6:1/2 G5',
  left: 'C3 G3 C3 G3 C3',
})
const cut = (hand: HandChoice, from = 0, to = score.end as number, of: Score = score): Chunk => {
  const chunk = cutChunk(of, tick(from), tick(to), hand)
  if (!chunk) throw new Error('no notes')
  return chunk
}
const right = cut('right')
const both = cut('both')

const problemAt = (place: number, flaw: Problem['flaw'], written?: number): Problem => ({
  flaw,
  place,
  ...(written === undefined ? {} : { written: key(written) }),
  times: 2,
})

/** The leap G5 to E6 at onset 5, missed by a step. */
const leap: Problem = { ...problemAt(5, 'wrong', 88), played: key(86) }

/** 'leapAlone 4-5 right': kind, onsets, hand, and the form where it is not as written. */
const offered = (chunk: Chunk, problem: Problem, of: Score = score): readonly string[] =>
  offerRemedies(of, chunk, diagnose(problem, chunk, [])).map(inWords)

const inWords = ({ kind, from, to, hand, form }: Remedy): string =>
  [kind, `${from}-${to}`, hand, ...(form === 'asWritten' ? [] : [form])].join(' ')

describe('what is offered', () => {
  test.each<[string, Chunk, Problem, readonly string[]]>([
    [
      'a leap in one hand',
      right,
      leap,
      ['leapAlone 4-5 right', 'smallGroup 4-6 right', 'loop 3-7 right'],
    ],
    [
      'the same with both hands',
      both,
      leap,
      ['leapAlone 4-5 right', 'oneHand 3-7 right', 'smallGroup 4-6 both'],
    ],
    [
      'hands out of step',
      both,
      problemAt(4, 'spread', 79),
      ['handsSlowly 2-6 both', 'oneHand 2-6 right', 'loop 2-6 both'],
    ],
    [
      'the left hand leaves its key out',
      both,
      problemAt(4, 'missing', 48),
      ['handsSlowly 2-6 both', 'oneHand 0-8 left', 'loop 2-6 both'],
    ],
    [
      'a stop before a new position, with a broken chord near',
      right,
      problemAt(5, 'hesitation', 88),
      ['loop 3-7 right', 'fingering 4-6 right'],
    ],
    [
      'at the beginning there is nothing before',
      right,
      problemAt(0, 'repeated', 72),
      ['smallGroup 0-2 right', 'loop 0-2 right', 'fingering 0-2 right'],
    ],
    [
      'at the end there is nothing after',
      right,
      problemAt(8, 'repeated', 79),
      ['smallGroup 6-8 right', 'loop 6-8 right', 'fingering 6-8 right'],
    ],
  ])('%s', (_, chunk, problem, remedies) => {
    expect(offered(chunk, problem)).toEqual(remedies)
  })

  test('blocked, where the notes make a chord', () => {
    const broken = writeScore({ right: 'C4:1/2 E4:1/2 G4:1/2 C5:1/2 E5:1/2 G5:1/2' })
    const chunk = cut('right', 0, broken.end, broken)
    expect(offered(chunk, problemAt(3, 'hesitation', 72), broken)).toEqual([
      'loop 1-5 right',
      'blocked 1-5 right blocked',
      'fingering 2-4 right',
    ])
  })

  test('never blocked where the chord is wider than the hand reaches', () => {
    const broken = writeScore({ right: 'C4:1/2 E4:1/2 G4:1/2 C5:1/2 E5:1/2 G5:1/2' })
    const chunk = cut('right', 0, broken.end, broken)
    const diagnosis = diagnose(problemAt(3, 'hesitation', 72), chunk, [])
    const kindsFor = (span: number) =>
      offerRemedies(broken, chunk, diagnosis, span).map(({ kind }) => kind)
    // E4 G4 C5 and G4 C5 E5 span a sixth: eight and nine semitones.
    expect(kindsFor(12)).toContain('blocked')
    expect(kindsFor(7)).toEqual(['loop', 'fingering'])
  })

  test('of a drill in another form the place is found by its notes', () => {
    const drilled = writeVariant(score, cut('right', 0, 8 * 240), 'stopAfter4')?.chunk
    if (!drilled) throw new Error('no stops')
    const diagnosis = diagnose(leap, drilled, [])
    expect(offerRemedies(score, right, diagnosis).map(inWords)[0]).toBe('leapAlone 4-5 right')
  })

  test('for any problem there are two or three, each playable, within the chunk, none faster', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...likelyKinds),
        fc.constantFrom(right, both, cut('left'), cut('both', 240, 1000)),
        fc.nat(20),
        (likely, chunk, place) => {
          const onset = place % chunk.onsets.length
          const notes = chunk.onsets[onset]?.notes.flatMap((note) => note.ids) ?? []
          const diagnosis: Diagnosis = { problem: problemAt(onset, 'wrong'), likely, notes }
          const remedies = offerRemedies(score, chunk, diagnosis)
          expect(remedies.length).toBeGreaterThanOrEqual(2)
          expect(remedies.length).toBeLessThanOrEqual(3)
          expect(new Set(remedies.map(({ kind }) => kind)).size).toBe(remedies.length)
          for (const remedy of remedies) {
            const exercise = remedyExercise(score, chunk, remedy)
            expect(exercise?.chunk.onsets.length).toBeGreaterThan(0)
            expect(exercise?.chunk.hand).toBe(remedy.hand)
            expect(remedy.from).toBeLessThanOrEqual(onset)
            expect(remedy.to).toBeGreaterThanOrEqual(onset)
            expect(remedy.tempoShare).toBeLessThan(1)
          }
        },
      ),
    )
  })

  test('the words are those of the journal', () => {
    expect(recordedRemedies).toEqual(remedyKinds)
  })
})

test('from a slip heard by the judge to the exercise against it', () => {
  const chunk = cut('right', 0, 8 * 240)
  const played = 'C5 D5 E5 F5 G5 D6 D6 C6 . . . . . .'
  const take = writeTake(`${played} ${played}`, 300)
  const heard = replayTake(chunk, { standard: 'notes', forgiveBrushed: false }, take)
  let coach = beginCoach(settings)
  const commands = heard.repetitions.flatMap((repetition, i) => {
    const [next, given] = stepCoach(coach, coachRepetition(repetition, ms(10_000 * (i + 1))))
    coach = next
    return given
  })
  const problem = commands.find((command) => command.kind === 'problem')
  if (!problem) throw new Error('no problem was named')
  const diagnosis = diagnose(problem, chunk, coach.sightings)
  const [first] = offerRemedies(score, chunk, diagnosis)
  const exercise = first && remedyExercise(score, chunk, first)
  expect([diagnosis.likely, diagnosis.hand, first?.kind]).toEqual([
    'shortLeap',
    'right',
    'leapAlone',
  ])
  expect(exercise?.chunk.onsets.map(({ notes }) => notes[0].key)).toEqual([79, 88])
})

describe('the drill of a remedy', () => {
  const remedy = (tempoShare: number): Remedy => ({
    kind: 'loop',
    from: 0,
    to: 2,
    hand: 'right',
    form: 'asWritten',
    tempoShare,
  })
  const play = (coach: Coach, letters: string): readonly [Coach, readonly Command[]] => {
    let now = coach
    const commands = [...letters].flatMap((letter, i) => {
      const at = ms((i + 1) * 10_000)
      const verdict = letter === 'c' ? 'clean' : 'flawed'
      const flaws: CoachFlaw[] = letter === 'c' ? [] : [{ kind: 'wrong', onset: i }]
      const start = ms(at - 1_000)
      const [next, given] = stepCoach(now, { kind: 'repetition', verdict, flaws, start, at })
      now = next
      return given
    })
    return [now, commands]
  }

  test('is solved by three clean in a row at its own tempo', () => {
    const begun = beginRemedy(remedy(0.5), tempo(96))
    expect([begun.rung, begun.streakGoal, begun.secure]).toEqual([48, 3, false])
    expect(play(begun, 'ccfcc')[0].secure).toBe(false)
    expect(play(begun, 'ccfccc')[0].secure).toBe(true)
  })

  test('eases off below that, and says when even that is too much', () => {
    const [coach, commands] = play(beginRemedy(remedy(0.5), tempo(96)), 'fff')
    expect(inShort(commands)).toBe('pause, tempo 46')
    expect(coach.rung).toBe(46)
    expect(inShort(play(coach, 'f'.repeat(60))[1])).toMatch(/smallerGroup/)
  })

  test.each([
    [0.5, 30, 20],
    [0.5, 16, 16],
    [0.7, 100, 70],
  ])('%f of %i is played at %i', (share, rung, played) => {
    expect(beginRemedy(remedy(share), tempo(rung)).rung).toBe(played)
  })
})

describe('back in the drill', () => {
  const slip: CoachFlaw = { kind: 'wrong', onset: 5, written: key(88), played: key(86) }
  const other: CoachFlaw = { kind: 'wrong', onset: 1, written: key(74), played: key(76) }

  /** c clean, s the slip, o another flaw, b broken off, R solved remedy, L remedy left unsolved. */
  const practise = (letters: string, startTempo: Tempo = tempo(72)) => {
    let coach = beginCoach({ ...settings, startTempo })
    const commands: Command[] = []
    for (const [i, letter] of [...letters.replaceAll(' ', '')].entries()) {
      const at = ms((i + 1) * 10_000)
      const verdict = letter === 'c' ? 'clean' : letter === 'b' ? 'brokenOff' : 'flawed'
      const flaws = letter === 's' ? [slip] : letter === 'o' ? [{ ...other, onset: i }] : []
      const solved = letter === 'R'
      const [next, given] = stepCoach(
        coach,
        letter === 'R' || letter === 'L'
          ? { kind: 'remedied', remedy: 'leapAlone', problem: leap, solved, at }
          : { kind: 'repetition', verdict, flaws, start: ms(at - 1_000), at },
      )
      coach = next
      commands.push(...given)
    }
    return { coach, commands: inShort(commands), sentences: sentences(commands) }
  }

  test.each([
    ['solved: one rung lower, and no pause any more', 'scsR', ''],
    ['ten without the flaw: it helped', 'scsR ccccbccccbcc', 'helped'],
    ['nine are not enough', 'scsR ccccbccccbc', ''],
    ['another flaw does not count against it', 'scsR coccbccocbcc', 'helped'],
    ['broken off ones are no proof', 'scsR bbbbbbbbbb', ''],
    ['the flaw again: it did not help', 'scsR cccs', 'did not help'],
    ['left unsolved: it is recorded, and nothing is watched', 'scsL cccs', 'overruled remedy'],
  ])('%s: %s', (_, letters, told) => {
    const given = practise(letters).commands.split(', ')
    const words = ['helped', 'did not help', 'overruled remedy']
    expect(given.filter((command) => words.includes(command)).join(', ')).toBe(told)
    expect(given.slice(0, 2)).toEqual(['problem', letters.includes('R') ? 'tempo 69' : told])
  })

  test('left unsolved, the pause goes on', () => {
    expect(practise('scsL').coach.paused?.reason.kind).toBe('sameFlaw')
    expect(practise('scsR').coach.paused).toBeUndefined()
  })

  test('it is said why it is slower, and can be undone', () => {
    expect(practise('scsR').sentences.at(-1)).toBe(
      'Back to the drill, one rung lower: from 72 to 69.',
    )
    const [undone] = stepCoach(practise('scsR').coach, { kind: 'undo', at: ms(60_000) })
    expect(undone.rung).toBe(72)
  })

  test('at the slowest rung it goes on there', () => {
    const { coach, commands } = practise('scsR', tempo(60))
    expect([coach.rung, coach.paused, commands]).toEqual([60, undefined, 'problem'])
  })

  test('two remedies are watched side by side', () => {
    const { coach, commands } = practise('scsR cc R cccccccc')
    expect(commands.match(/helped/g)).toHaveLength(1)
    expect(coach.watches.map(({ without }) => without)).toEqual([8])
  })
})
