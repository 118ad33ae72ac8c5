import type { TapTestText } from '@/text/tapTest'
import { counted } from './counted'

export const tapTest: TapTestText = {
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
