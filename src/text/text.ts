/**
 * What the program says, in the language of the person.
 *
 * A catalogue holds the words of one area (`review.ts`: those of the review), in English: fixed words
 * as strings, sentences with figures as functions. Another language is a folder with the same
 * catalogues (`src/german`), fetched when it is wanted. The types hold the two equal: a sentence that
 * lacks in German does not compile.
 *
 * Example: `reviewText.cleanOf(3, 5)` -> '3 of 5 clean'; after `speak('de', german)` '3 von 5 fehlerfrei'.
 *
 * The language is the one thing in the core that is neither argument nor result: every sentence
 * depends on it, and it changes when nothing else happens. So it is looked up when a word is read, and
 * never when a file is loaded.
 */
export const languages = ['en', 'de'] as const
export type Language = (typeof languages)[number]

type Words = Readonly<Record<string, unknown>>
/** Of a language by the names of the catalogues. */
export type Catalogues = Readonly<Record<string, Words>>

let spoken: { readonly language: Language; readonly catalogues: Catalogues } = {
  language: 'en',
  catalogues: {},
}

/** From now on every word is of this language; the catalogues of English are always here. */
export const speak = (language: Language, catalogues: Catalogues = {}): void => {
  spoken = { language, catalogues }
}

export const spokenLanguage = (): Language => spoken.language

/** A catalogue by its name, in English; what is read from it is of the language that is spoken then. */
export const catalogue = <T extends Words>(name: string, english: T): T =>
  live(english, () => spoken.catalogues[name])

/** What lies deeper, such as the words of an area by kind, is looked up as late. */
const live = <T extends Words>(english: T, other: () => Words | undefined): T => {
  const deeper = new Map<string, Words>()
  return new Proxy(english, {
    get: (_, word) => {
      if (typeof word !== 'string') return Reflect.get(english, word) as unknown
      const own = english[word]
      if (!isWords(own)) return other()?.[word] ?? own
      const known = deeper.get(word) ?? live(own, () => asWords(other()?.[word]))
      deeper.set(word, known)
      return known
    },
  })
}

const isWords = (value: unknown): value is Words =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const asWords = (value: unknown): Words | undefined => (isWords(value) ? value : undefined)
