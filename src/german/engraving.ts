import type { EngravingText } from '@/text/engraving'

export const engraving: EngravingText = {
  undrawn: (cause) =>
    `Die Noten lassen sich nicht zeichnen (${cause}). Ihr Spiel wird weiter gehört; die Seite neu laden, um es noch einmal zu versuchen.`,
  unloaded: 'das Programm dafür lässt sich nicht laden',
  stopped: 'das Programm dafür ist stehen geblieben',
  closed: 'die Seite wurde geschlossen',
  unanswered: (seconds) => `nach ${seconds} Sekunden noch keine Antwort`,
}
