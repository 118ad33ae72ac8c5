/** English: 1 -> '1 onset', 3 -> '3 onsets'. */
export const plural = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`
