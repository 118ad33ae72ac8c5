import type { LanguageChoice } from '@/app/settings'
import { failed, ok, type Result } from '@/music/result'
import { languages, type Catalogues, type Language } from '@/text/text'

/** Languages besides English come when they are wanted: a first visit loads one. */
const catalogues: Readonly<Record<Language, () => Promise<Catalogues>>> = {
  en: async () => ({}),
  de: async () => (await import('@/german/german')).german,
}

/** The language of the machine where the person chose none; English where it is none of ours. */
export const languageOf = (choice: LanguageChoice, ofMachine: string): Language =>
  languages.find((language) => language === choice) ??
  languages.find((language) => ofMachine.toLowerCase().split('-')[0] === language) ??
  'en'

/** Where they cannot be fetched, as without a network, the words that are spoken stay. */
export const fetchWords = async (language: Language): Promise<Result<Catalogues, string>> => {
  try {
    return ok(await catalogues[language]())
  } catch (error) {
    return failed(String(error))
  }
}
