const words =
  'no one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty'.split(
    ' ',
  )
const tens: Readonly<Record<number, string>> = {
  30: 'thirty',
  40: 'forty',
  50: 'fifty',
  60: 'sixty',
}

/** English: 0 -> 'no', 3 -> 'three', 60 -> 'sixty', 23 -> '23'. */
export const inWords = (n: number): string => words[n] ?? tens[n] ?? `${n}`

/** 'three' -> 'Three' */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
