import { expect, test } from 'vitest'
import { tell, type Told } from '@/text/told'

const lacking = {
  header: () => 'the header should go on',
  track: ({ bytes }: { readonly bytes: number }) => `the track lacks ${bytes} bytes`,
}

test('what was told as data is put into the sentence of its kind', () => {
  const found: readonly Told<typeof lacking>[] = [{ kind: 'track', bytes: 3 }, { kind: 'header' }]
  expect(found.map((each) => tell(lacking, each))).toEqual([
    'the track lacks 3 bytes',
    'the header should go on',
  ])
})

test('it goes through a message to a worker and back', () => {
  const found: Told<typeof lacking> = { kind: 'track', bytes: 5 }
  expect(tell(lacking, structuredClone(found))).toBe('the track lacks 5 bytes')
})
