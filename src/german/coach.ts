import type { CoachText } from '@/text/coach'
import { capital, inWords, often } from './numberWords'

/** 'Ein Durchgang', '60 Durchgänge' */
const repetitionsIn = (n: number): string =>
  n === 1 ? 'Ein Durchgang' : `${capital(inWords(n))} Durchgänge`

/** 'in einer Minute', 'in sieben Minuten' */
const inMinutes = (n: number): string => (n === 1 ? 'in einer Minute' : `in ${inWords(n)} Minuten`)

const cleanOfLast = (clean: number, of: number): string => {
  const were = clean === 0 ? 'war keiner' : clean === 1 ? 'war einer' : `waren ${inWords(clean)}`
  return `Von den letzten ${inWords(of)} ${were} fehlerfrei, weniger als die Hälfte`
}

export const coach: CoachText = {
  streak: (streak, from, to) =>
    `${capital(inWords(streak))} fehlerfrei hintereinander: von ${from} hinauf auf ${to}.`,
  tooFast: (evidence, from, to) => `${evidence}: von ${from} hinunter auf ${to}.`,
  tooBig: (evidence, at) =>
    `${evidence}, bei ${at}, dem langsamsten Tempo hier: Eine kleinere Gruppe wird besser gehen.`,
  flawedOfLast: (flawed, of) =>
    flawed === of
      ? `${capital(inWords(flawed))} fehlerhaft hintereinander`
      : `${capital(inWords(flawed))} der letzten ${inWords(of)} waren fehlerhaft`,
  lowShare: cleanOfLast,
  flawedInARow: (flawed) =>
    `${capital(inWords(flawed))} fehlerhaft hintereinander: Hände weg, die Stelle ansehen, dann weiter.`,
  sameFlaw: (flaw, onset, times) =>
    `${capital(often(times))} bei Anschlag ${onset}: ${flaw}. Erst lösen, dann wiederholen.`,
  raised: (from, to) => `Ihre Wahl: von ${from} hinauf auf ${to}.`,
  lowered: (from, to) => `Ihre Wahl: von ${from} hinunter auf ${to}.`,
  rest: (minutes) => `${capital(inWords(minutes))} Minuten geübt: jetzt fünf Minuten Pause.`,
  strongRest: (minutes) =>
    `${capital(inWords(minutes))} Minuten ohne Pause geübt: zehn Minuten aufhören. Wenn etwas schmerzt oder kribbelt, für heute Schluss.`,
  longAtPlace: (repetitions, minutes) =>
    `${repetitionsIn(repetitions)} ${inMinutes(minutes)} an dieser Stelle: jetzt eine andere, diese später wieder.`,
  longStreak: (clean, of, streakGoal, tries) =>
    `Wenn ${inWords(clean)} von ${inWords(of)} fehlerfrei sind, brauchen ${inWords(streakGoal)} hintereinander etwa ${tries} Versuche: Mit einer kleineren Gruppe geht es schneller.`,
  remedied: (from, to) => `Zurück zur Übung, eine Stufe langsamer: von ${from} auf ${to}.`,
  trialUp: (clean, from, to) =>
    `${capital(inWords(clean))} von ${inWords(clean)} fehlerfrei bei ${from}: jetzt ${to}.`,
  trialDown: (from, to) => `Noch nicht bei ${from}: jetzt ${to}.`,
  trialEnded: (clean, at) =>
    `${capital(inWords(clean))} von ${inWords(clean)} fehlerfrei bei ${at}: Hier beginnt die Übung.`,
  trialTooBig: (clean, at) =>
    `Keine ${inWords(clean)} von ${inWords(clean)} fehlerfrei bei ${at}, dem langsamsten Tempo hier: Eine kleinere Gruppe wird besser gehen.`,
  trialLeft: (at) => `Ihre Wahl: Die Übung beginnt bei ${at}.`,
  likely: {
    shortLeap: 'Der Sprung ist zu kurz.',
    longLeap: 'Der Sprung ist zu weit.',
    weakFinger: 'Ein schwacher Finger bringt seine Taste nicht rechtzeitig hinunter.',
    neighbours: 'Ein Finger streift die Nachbartaste.',
    handsApart: 'Die Hände sind nicht zusammen.',
    positionChange: 'Hier wechselt die Hand die Lage.',
    rhythm: 'Der Rhythmus ist wohl falsch gelesen.',
    accidental: 'Schwarze und weiße Taste verwechselt: auf die Vorzeichen achten.',
    unknown: 'Aus den Noten allein lässt sich keine einzelne Ursache erkennen.',
  },
  remedies: {
    smallGroup: 'Die drei Anschläge um die Stelle herum, langsam.',
    rightHand: 'Die rechte Hand allein, etwas langsamer.',
    leftHand: 'Die linke Hand allein, etwas langsamer.',
    blocked: 'Die Töne jeder Lage als Akkord: Die Hand findet sie auf einmal.',
    loop: 'Zwei Anschläge davor und zwei danach, immer im Kreis.',
    leapAlone: 'Nur den Sprung, langsam: erst die Taste ansehen, dann die Hand bewegen.',
    tapFirst: 'Laut zählen und klopfen, dann im halben Tempo spielen.',
    handsSlowly: 'Beide Hände, so langsam, dass man hört, wo sie sich treffen.',
    fingering: 'Einen anderen Fingersatz versuchen, dann diese drei langsam.',
    nameKeys: 'Jede Taste laut benennen, bevor sie gespielt wird, langsam.',
  },
}
