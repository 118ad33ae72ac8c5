import type { TapTestText } from '@/text/tapTest'
import { counted } from './counted'

export const tapTest: TapTestText = {
  title: 'Klickprobe',
  why: 'Ihr Anschlag kommt ein wenig vor oder nach dem Klick, immer um etwa gleich viel: Lautsprecher und Instrument brauchen ihre Zeit, und die meisten schlagen knapp vor einem Klick an. Schlagen Sie zu jedem von sechzehn Klicks eine beliebige Taste an, und diese Abweichung wird abgezogen, bevor etwas zu früh oder zu spät genannt wird.',
  toggle: {
    ready: 'Klicks starten',
    starting: 'Anhalten',
    silent: 'Noch einmal versuchen',
    listening: 'Anhalten',
    done: 'Noch einmal messen',
  },
  use: 'Abziehen',
  useNone: 'Nichts abziehen',
  back: 'Zurück',
  inUse: (lag) => `Abgezogene Abweichung: ${lag}.`,
  measureAgain: 'Mit anderen Lautsprechern, Kopfhörern oder einem anderen Instrument neu messen.',
  early: 'früh',
  click: 'Klick',
  late: 'spät',
  counted: (figure, of) => [figure, ` von ${of}`],
  strikes: (n, of, early, late) => `${n} von ${of} Anschlägen: ${early} zu früh, ${late} zu spät`,
  noLag: 'keine',
  lag: (ms, side) => `${ms} ms ${side === 'after' ? 'nach' : 'vor'} dem Klick`,
  onTheClick: 'genau mit dem Klick',
  start: (tempo) =>
    `Klicks starten und mit jedem eine Taste anschlagen; es sind ${tempo} in der Minute.`,
  begins: 'Die Klicks beginnen …',
  silent: 'Kein Klick kann klingen.',
  strike: 'Mit jedem Klick eine beliebige Taste anschlagen.',
  few: (n) =>
    `Nur ${counted(n, 'Anschlag zählt', 'Anschläge zählen')}: noch einmal messen, zu jedem Klick ein Anschlag.`,
  figure: (lag, spread) => `${lag}, auf ${spread} ms genau`,
  trusted: (figure) => `Ihr Anschlag kommt ${figure}.`,
  uneven: (figure) =>
    `Ihr Anschlag kommt ${figure}: zu ungleichmäßig für eine Messung. Noch einmal messen.`,
  far: (figure) =>
    `Ihr Anschlag kommt ${figure}: zu viel, um es abzuziehen. Vielleicht sind es kabellose Kopfhörer.`,
}
