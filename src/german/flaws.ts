import type { FlawsText } from '@/text/flaws'

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
  standards: {
    notes: 'Töne: richtige Tasten, richtige Reihenfolge',
    flow: 'Fluss: richtige Tasten, kein Stocken',
    time: 'Zeit: kein Stocken, gleichmäßiger Puls, Akkorde zusammen',
  },
}
