const words = 'null eins zwei drei vier fünf sechs sieben acht neun zehn elf zwölf'.split(' ')

/** Deutsch: 3 -> 'drei'; beyond twelve in figures, as in print. */
export const inWords = (n: number): string => words[n] ?? `${n}`

/** 'drei' -> 'Drei' */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** How often: 1 -> 'einmal', 3 -> 'dreimal', 20 -> '20-mal'. */
export const often = (n: number): string => {
  if (n === 1) return 'einmal'
  return words[n] === undefined ? `${n}-mal` : `${words[n]}mal`
}
