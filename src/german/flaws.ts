import type { FlawsText } from '@/text/flaws'
import { counted } from './counted'
import { often } from './numberWords'

const verdicts = { clean: 'Fehlerfrei', flawed: 'Fehlerhaft', brokenOff: 'Abgebrochen' }

export const flaws: FlawsText = {
  names: {
    wrong: 'Andere Taste',
    missing: 'Fehlt',
    extra: 'Eine Taste zu viel',
    repeated: 'Doppelt angeschlagen',
    order: 'Reihenfolge vertauscht',
    restart: 'Zurückgegangen',
    hesitation: 'Gestockt',
    early: 'Zu früh',
    late: 'Zu spät',
    uneven: 'Ungleichmäßig',
    spread: 'Akkord nicht zusammen',
    drift: 'Tempo verändert sich',
  },
  inSentence: {
    wrong: 'andere Taste',
    missing: 'fehlt',
    extra: 'eine Taste zu viel',
    repeated: 'doppelt angeschlagen',
    order: 'Reihenfolge vertauscht',
    restart: 'zurückgegangen',
    hesitation: 'gestockt',
    early: 'zu früh',
    late: 'zu spät',
    uneven: 'ungleichmäßig',
    spread: 'Akkord nicht zusammen',
    drift: 'Tempo verändert sich',
  },
  told: {
    wrong: (written, played) =>
      `${played ?? 'eine andere Taste'} statt ${written ?? 'der notierten Taste'}`,
    missing: (written) => `${written ?? 'ein Ton'} fehlt`,
    extra: (_, played) => `${played ?? 'eine Taste'} zu viel`,
    repeated: (_, played) => `${played ?? 'eine Taste'} doppelt angeschlagen`,
    order: () => 'zwei Anschläge vertauscht',
    restart: () => 'zurückgegangen',
    hesitation: (written) => `vor ${written ?? 'dem Ton'} gestockt`,
    early: (written) => `${written ?? 'der Ton'} zu früh`,
    late: (written) => `${written ?? 'der Ton'} zu spät`,
    uneven: () => 'ungleichmäßig',
    spread: () => 'Akkord nicht zusammen',
    drift: () => 'das Tempo verändert sich',
  },
  legend: {
    marks: 'Die Zeichen',
    another: 'Andere Taste: Der kleine Kopf ist die am häufigsten angeschlagene',
    drift:
      'Tempo verändert sich: Die Linie steigt, wo es schneller, und fällt, wo es langsamer wurde',
    weights: 'Ihre Stärke',
    upTo: (n) => (n === 1 ? 'einmal' : `bis zu ${n}-mal`),
    between: (from, to) => (from === to ? `${from}-mal` : `${from}- bis ${to}-mal`),
    atLeast: (n) => `${n}-mal und öfter`,
  },
  times: often,
  verdicts,
  verdict: (verdict, told, more) => {
    const rest = more > 0 ? [counted(more, 'weiterer Fehler', 'weitere Fehler')] : []
    return told.length === 0
      ? `${verdicts[verdict]}.`
      : `${verdicts[verdict]}: ${[told.join(', '), ...rest].join(' und ')}.`
  },
  standards: {
    notes: 'Töne: richtige Tasten, richtige Reihenfolge',
    flow: 'Fluss: richtige Tasten, kein Stocken',
    time: 'Zeit: kein Stocken, gleichmäßiger Puls, Akkorde zusammen',
  },
}
