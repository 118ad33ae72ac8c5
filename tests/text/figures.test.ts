import { afterEach, expect, test } from 'vitest'
import { german } from '@/german/german'
import { dateWords, weekdayWord } from '@/text/dates'
import { decimal, grouped, rounded } from '@/text/numbers'
import { languages, speak, type Language } from '@/text/text'

afterEach(() => speak('en'))
const speakIn = (language: Language): void => speak(language, language === 'de' ? german : {})

const days = Array.from(
  { length: 12 },
  (_, i) => `2026-${String(i + 1).padStart(2, '0')}-0${(i % 9) + 1}`,
)

// The locale data of the runtime (Unicode CLDR).
test.each(languages)('days, months and weekdays are those of the locale %s', (language) => {
  speakIn(language)
  const locale = language === 'en' ? 'en-GB' : 'de-DE'
  const format = (day: string, parts: Intl.DateTimeFormatOptions): string =>
    new Date(`${day}T12:00:00Z`).toLocaleDateString(locale, { ...parts, timeZone: 'UTC' })
  for (const day of days) {
    expect(dateWords(day)).toBe(format(day, { day: 'numeric', month: 'long', year: 'numeric' }))
    expect(dateWords(day.slice(0, 7))).toBe(format(day, { month: 'long', year: 'numeric' }))
    expect(weekdayWord(day)).toBe(format(day, { weekday: 'long' }))
  }
})

test('a day in a narrow place', () => {
  expect([dateWords('2026-10-03', 'short'), dateWords('2026-05', 'short')]).toEqual([
    '3 Oct',
    'May',
  ])
  speakIn('de')
  expect([dateWords('2026-10-03', 'short'), dateWords('2026-05', 'short')]).toEqual([
    '3. Okt.',
    'Mai',
  ])
})

test('figures have the decimal mark of the language', () => {
  expect([decimal(3, 1), rounded(3, 1), rounded(2.26, 1), grouped(1234567)]).toEqual([
    '3.0',
    '3',
    '2.3',
    '1\u202f234\u202f567',
  ])
  speakIn('de')
  expect([decimal(3, 1), rounded(3, 1), rounded(2.26, 1), grouped(1234567)]).toEqual([
    '3,0',
    '3',
    '2,3',
    '1\u202f234\u202f567',
  ])
})
