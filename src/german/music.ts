import type { MusicText } from '@/text/music'
import { counted } from './counted'

export const music: MusicText = {
  hands: { right: 'rechte Hand', left: 'linke Hand', both: 'beide Hände' },
  forms: {
    asWritten: 'wie notiert',
    longShort: 'lang–kurz',
    shortLong: 'kurz–lang',
    stopAfter3: 'Halt nach je drei',
    stopAfter4: 'Halt nach je vier',
    accentEvery3: 'Akzent auf jedem dritten',
    accentEvery4: 'Akzent auf jedem vierten',
    blocked: 'als Akkorde',
  },
  beats: {
    eighths: 'Achtel',
    quarters: 'Viertel',
    dottedQuarters: 'punktierte Viertel',
    halves: 'Halbe',
    other: 'Schläge',
  },
  beatsAlone: 'nur die Schläge',
  partsOfQuarter: { 2: 'Achtel', 3: 'Triolen', 4: 'Sechzehntel' },
  toABeat: (n) => `${n} auf einen Schlag`,
  pedals: { sustain: 'rechtes Pedal', sostenuto: 'mittleres Pedal', soft: 'linkes Pedal' },
  bars: (from, to) => (from === to ? `Takt ${from}` : `Takte ${from}–${to}`),
  barAndBeat: (bar, beat) => `Takt ${bar}, Schlag ${beat}`,
  aMinute: (beats) => `${beats} in der Minute`,
  onsets: (n) => counted(n, 'Anschlag', 'Anschläge'),
  percent: (whole) => `${whole} %`,
}
