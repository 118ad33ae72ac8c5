import { capital, inWords } from './numberWords'
import { catalogue } from './text'

/** 'one minute', 'seven minutes' */
const several = (n: number, what: string): string => `${inWords(n)} ${what}${n === 1 ? '' : 's'}`

/** The coach: why it does or asks something, what causes a flaw, what may help. Tempi come formatted. */
export const coachText = catalogue('coach', {
  streak: (streak: number, from: string, to: string) =>
    `${capital(inWords(streak))} clean in a row: up from ${from} to ${to}.`,
  tooFast: (evidence: string, from: string, to: string) =>
    `${evidence}: down from ${from} to ${to}.`,
  tooBig: (evidence: string, at: string) =>
    `${evidence} at ${at}, the slowest tempo here: a smaller group will go better.`,
  flawedOfLast: (flawed: number, of: number) =>
    flawed === of
      ? `${capital(inWords(flawed))} flawed in a row`
      : `${capital(inWords(flawed))} of the last ${inWords(of)} were flawed`,
  lowShare: (clean: number, of: number) =>
    `${capital(inWords(clean))} clean of the last ${inWords(of)}, under one half`,
  flawedInARow: (flawed: number) =>
    `${capital(inWords(flawed))} flawed in a row: hands off, look at the place, then go on.`,
  sameFlaw: (flaw: string, onset: number, times: number) =>
    `${capital(flaw)} at onset ${onset}, ${times === 2 ? 'twice' : `${inWords(times)} times`}: solve it before repeating it.`,
  raised: (from: string, to: string) => `Your choice: up from ${from} to ${to}.`,
  lowered: (from: string, to: string) => `Your choice: down from ${from} to ${to}.`,
  rest: (minutes: number) =>
    `${capital(inWords(minutes))} minutes of practice: five minutes of rest now.`,
  strongRest: (minutes: number) =>
    `${capital(inWords(minutes))} minutes of practice without a rest: stop for ten minutes. If anything hurts or tingles, stop for today.`,
  longAtPlace: (repetitions: number, minutes: number) =>
    `${capital(several(repetitions, 'repetition'))} in ${several(minutes, 'minute')} at this place: another place now, this one again later.`,
  longStreak: (clean: number, of: number, streakGoal: number, tries: number) =>
    `At ${inWords(clean)} of ${inWords(of)} clean, ${inWords(streakGoal)} in a row take about ${tries} tries: a smaller group will be quicker.`,
  remedied: (from: string, to: string) =>
    `Back to the drill, one rung lower: from ${from} to ${to}.`,
  trialUp: (clean: number, from: string, to: string) =>
    `${capital(inWords(clean))} of ${inWords(clean)} clean at ${from}: now ${to}.`,
  trialDown: (from: string, to: string) => `Not yet at ${from}: now ${to}.`,
  trialEnded: (clean: number, at: string) =>
    `${capital(inWords(clean))} of ${inWords(clean)} clean at ${at}: the drill starts here.`,
  trialTooBig: (clean: number, at: string) =>
    `No ${inWords(clean)} of ${inWords(clean)} clean at ${at}, the slowest tempo here: a smaller group will go better.`,
  trialLeft: (at: string) => `Your choice: the drill starts at ${at}.`,
  /** What a problem most likely is. */
  likely: {
    shortLeap: 'The leap falls short.',
    longLeap: 'The leap goes too far.',
    weakFinger: 'A weak finger does not bring its key down in time.',
    neighbours: 'A finger touches the neighbouring key as well.',
    handsApart: 'The hands are out of step.',
    positionChange: 'The hand moves to a new position here.',
    rhythm: 'The rhythm seems to be misread.',
    accidental: 'The black and the white key are mixed up: look at the accidentals.',
    unknown: 'No single cause can be seen from the notes.',
  },
  /** What to do against it. */
  remedies: {
    smallGroup: 'The three onsets around the place, slowly.',
    rightHand: 'The right hand alone, a little slower.',
    leftHand: 'The left hand alone, a little slower.',
    blocked: 'The notes of each position as one chord: the hand finds it at once.',
    loop: 'The two onsets before and the two after, round and round.',
    leapAlone: 'The leap alone, slowly: look at the key before the hand moves.',
    tapFirst: 'Count aloud and tap it, then play it at half the tempo.',
    handsSlowly: 'Both hands, so slowly that you hear where they meet.',
    fingering: 'Look at the fingering, try another one, then play these three slowly.',
    nameKeys: 'Name each key aloud before you play it, slowly.',
  },
})

export type CoachText = typeof coachText
