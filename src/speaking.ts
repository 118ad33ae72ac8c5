import type { LanguageChoice } from '@/app/settings'
import { languages, speak, type Catalogues, type Language } from '@/text/text'

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

/** Every word is of this language once it is fetched; where it cannot be, the words stay as they are. */
export const speakIn = async (language: Language): Promise<void> =>
  speak(language, await catalogues[language]())
