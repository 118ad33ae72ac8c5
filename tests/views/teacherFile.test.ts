import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { afterEach, expect, test } from 'vitest'
import { SaxesParser } from 'saxes'
import { german } from '@/german/german'
import type { Day } from '@/journal/day'
import { speak } from '@/text/text'
import { escapeText, teacherFile } from '@/views/teacherFile'
import { fileNameOf, practisedWords, spanWords } from '@/views/teacherWords'

afterEach(() => speak('en'))

test('the policy of the file allows its one style sheet, by the hash that Node counts too, and nothing else', async () => {
  const styles = '.a > b { color: #111 } /* ü */'
  const file = await teacherFile('A Study', '<article>notes</article>', styles)
  const hash = createHash('sha256').update(styles, 'utf8').digest('base64')
  expect(file).toContain(
    `content="default-src 'none'; style-src 'sha256-${hash}'; base-uri 'none'; form-action 'none'"`,
  )
  expect(file).toContain(`<style>${styles}</style>`)
  expect(file).not.toContain('<script')
})

test('whatever the title is, it is text: a strict parser reads it back', () => {
  fc.assert(
    fc.property(fc.string({ unit: fc.constantFrom(...`<>&"'/ab-![]`) }), (title) => {
      let read = ''
      const parser = new SaxesParser()
      parser.on('text', (text) => (read += text))
      parser.on('error', (error) => {
        throw error
      })
      parser.write(`<title>${escapeText(title)}</title>`).close()
      expect(read).toBe(title)
    }),
  )
})

test('a title that would end the element stays a title', async () => {
  const file = await teacherFile('</title><script>alert(1)</script>', '', '')
  expect(file).toContain('<title>&lt;/title&gt;&lt;script&gt;alert(1)&lt;/script&gt;</title>')
})

test.each([
  ['Étude in Ré, N° 3', 'passagework-etude-in-re-n-3-2026-05-01'],
  ['../../etc: <b>', 'passagework-etc-b-2026-05-01'],
  ['夜の歌', 'passagework-夜の歌-2026-05-01'],
  ['…', 'passagework-2026-05-01'],
])('the file of "%s" is named %s', (title, name) => {
  expect(fileNameOf(title, '2026-05-01')).toBe(name)
})

test.each([
  ['2026-01-05', '2026-01-11', '5 to 11 January 2026'],
  ['2026-04-27', '2026-05-03', '27 April to 3 May 2026'],
  ['2025-12-29', '2026-01-04', '29 December 2025 to 4 January 2026'],
  ['2026-05-03', '2026-05-03', '3 May 2026'],
])('from %s to %s is %s', (from, to, words) => {
  expect(spanWords({ from: from as Day, to: to as Day })).toBe(words)
})

test.each([
  ['2026-01-05', '2026-01-11', '5. bis 11. Januar 2026'],
  ['2026-04-27', '2026-05-03', '27. April bis 3. Mai 2026'],
  ['2025-12-29', '2026-01-04', '29. Dezember 2025 bis 4. Januar 2026'],
  ['2026-05-03', '2026-05-03', '3. Mai 2026'],
])('in German, from %s to %s is %s', (from, to, words) => {
  speak('de', german)
  expect(spanWords({ from: from as Day, to: to as Day })).toBe(words)
})

test('the file names its language, and is written in it', async () => {
  expect(await teacherFile('A Study', '', '')).toContain('<html lang="en">')
  speak('de', german)
  expect(await teacherFile('A Study', '', '')).toContain('<html lang="de">')
  expect(practisedWords({ minutes: 200, days: 1, repetitions: 1 })).toBe(
    '3 Stunden 20 Minuten an 1 Tag, 1 Durchgang',
  )
})
