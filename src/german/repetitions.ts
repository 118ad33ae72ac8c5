import type { RepetitionsText } from '@/text/repetitions'

export const repetitions: RepetitionsText = {
  played: {
    lasted: (seconds) => `${seconds} Sekunden von der ersten Taste bis zur letzten`,
    written: (seconds, tempo) => `${seconds} Sekunden wie notiert bei ${tempo}`,
    picture:
      'Oben, wann jeder Anschlag fällig war, unten, wann jede Taste kam: je höher, desto lauter; ein Fehler ist eingekreist.',
    dueRow: 'fällig',
    playedRow: 'gespielt',
    columns: { key: 'Taste', seconds: 'Sekunden', held: 'Gehalten', velocity: 'Stärke' },
    flaw: (key) => `${key}, ein Fehler`,
  },
}
