import { catalogue } from './text'

/** How figures are written; what the rest of the program asks for are the functions below. */
export const numbersText = catalogue('numbers', { decimalMark: '.' })

export type NumbersText = typeof numbersText

/** With so many places: 2.5, 1 -> '2.5'; 3, 1 -> '3.0'. */
export const decimal = (n: number, places: number): string =>
  n.toFixed(places).replace('.', numbersText.decimalMark)

/** With at most so many places: 2.25, 1 -> '2.3'; 3, 1 -> '3'. */
export const rounded = (n: number, places: number): string =>
  String(Number(n.toFixed(places))).replace('.', numbersText.decimalMark)

/** 12345 -> '12 345' with a thin space, which every language reads. */
export const grouped = (n: number): string => String(n).replace(/\B(?=(\d{3})+$)/g, '\u202f')
