import type { BuildUpText } from '@/text/buildUp'
import { counted } from './counted'

const minutes = (n: number): string => (n <= 1 ? 'etwa eine Minute' : `etwa ${n} Minuten`)

const groups: Readonly<Record<number, string>> = {
  2: 'Zweiergruppe',
  3: 'Dreiergruppe',
  4: 'Vierergruppe',
  5: 'Fünfergruppe',
}

export const buildUp: BuildUpText = {
  title: 'Aufbau',
  what: (bars, hand, tempo, beats) => `${bars}, ${hand}, bis ${tempo} ${beats} in der Minute.`,
  left: ({ done, of, left, minutes: n, isOwnPace }) => {
    const pace = `${minutes(n)} ${isOwnPace ? 'in Ihrem' : 'bei üblichem'} Arbeitstempo.`
    return done > 0
      ? `${done} von ${of} fertig, noch ${counted(left, 'Übung', 'Übungen')}, ${pace}`
      : `${counted(left, 'Übung', 'Übungen')}, ${pace}`
  },
  allDone: (n) => (n === 1 ? 'Die eine Übung ist fertig.' : `Alle ${n} Übungen sind fertig.`),
  start: 'Beginnen',
  goOn: 'Weiter',
  toPiece: 'Zurück zum Stück',
  notebook: 'Notizbuch',
  hands: 'Hände',
  thoroughness: { title: 'Wie gründlich', brisk: 'zügig', thorough: 'gründlich' },
  direction: {
    title: 'Reihenfolge in einer Etappe',
    forward: 'von vorn',
    fromTheEnd: 'vom Ende her',
  },
  stage: (n) => `Etappe ${n}`,
  states: { done: 'fertig:', next: 'als Nächstes:', open: '' },
  kinds: {
    group: (size) => groups[size] ?? `Gruppe von ${size}`,
    bridge: 'Brücke',
    pair: 'Paar',
    section: 'Abschnitt',
    whole: 'das Ganze',
  },
  purposes: {
    group: 'So wenige Töne gelingen auf Anhieb.',
    bridge: 'Führt über die Verbindung zweier Gruppen.',
    pair: 'Verbindet zwei Gruppen, die einzeln gehen.',
    section: 'Verbindet, was paarweise geht.',
    wholeOfOneHand: 'Diese Hand ganz, bevor die andere dazukommt.',
    groupTogether: 'Jede Hand kann es: jetzt zusammen.',
    bridgeTogether: 'Führt mit beiden Händen über die Verbindung.',
    pairTogether: 'Verbindet zwei Gruppen mit beiden Händen.',
    sectionTogether: 'Verbindet die Paare mit beiden Händen.',
    whole: 'Die ganze Passage, bis zum Zieltempo.',
    asWritten: 'Wie es in den Noten steht.',
    longShort:
      'Jeder zweite Schritt ist schnell, mit Zeit zum Vorbereiten: für einen ungleichmäßigen Lauf.',
    shortLong: 'Nun die anderen Schritte: Nach lang–kurz war so jeder Schritt einmal schnell.',
    stopAfter3:
      'Drei Töne, dann ein Halt, um die nächsten drei vorzubereiten: für einen Lauf, der stolpert.',
    stopAfter4:
      'Vier Töne, dann ein Halt, um die nächsten vier vorzubereiten: für einen Lauf, der stolpert.',
    accentEvery3:
      'Der Akzent kommt reihum zu jedem Finger: für einen schwachen Finger. Geprüft werden nur Tasten und Zeit, also selbst hinhören.',
    accentEvery4:
      'Der Akzent führt von Gruppe zu Gruppe: für einen Lauf ohne Richtung. Geprüft werden nur Tasten und Zeit, also selbst hinhören.',
    blocked: 'Der gebrochene Akkord auf einmal: Die Hand findet ihre Form, ehe die Finger laufen.',
  },
}
