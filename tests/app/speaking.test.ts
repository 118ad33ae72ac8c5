import { expect, test } from 'vitest'
import { fetchWords, languageOf } from '../../src/speaking'

test.each([
  ['auto', 'de-AT', 'de'],
  ['auto', 'DE', 'de'],
  ['auto', 'en-GB', 'en'],
  // None of ours.
  ['auto', 'fr-CH', 'en'],
  ['auto', 'den', 'en'],
  ['en', 'de-DE', 'en'],
  ['de', 'en-GB', 'de'],
] as const)('chosen %s on a machine in %s: %s', (choice, ofMachine, language) => {
  expect(languageOf(choice, ofMachine)).toBe(language)
})

test('the words of German are fetched; those of English are here', async () => {
  expect(await fetchWords('en')).toEqual({ ok: true, value: {} })
  const fetched = await fetchWords('de')
  expect(fetched.ok && fetched.value['shell']).toMatchObject({ options: 'Einstellungen' })
})
