import { expect, test } from 'vitest'
import { createHearing } from '@/app/hearing'
import type { Ports } from '@/app/ports'
import { createDesk, settled } from '../support/fakePorts'

const take = { events: [] }

/** A sound that ends when the test says so. */
const setUp = () => {
  const { ports } = createDesk([])
  const ends: (() => void)[] = []
  const told: string[] = []
  const sound: Ports['sound'] = {
    ...ports.sound,
    hearTake: () =>
      new Promise((end) => {
        told.push('hear')
        ends.push(end)
      }),
    quiet: () => told.push('quiet'),
  }
  const hearing = createHearing({ sound })
  return { hearing, ends, told, heard: () => hearing.store.getState().heard }
}

test('what is heard has its name until it ends', async () => {
  const { hearing, ends, heard } = setUp()
  void hearing.hear('one', take)
  expect(heard()).toBe('one')
  await settled()
  ends[0]?.()
  await settled()
  expect(heard()).toBeUndefined()
})

test('the end of one is not the end of the next', async () => {
  const { hearing, ends, heard } = setUp()
  void hearing.hear('one', take)
  await settled()
  void hearing.hear('two', take)
  await settled()
  ends[0]?.()
  await settled()
  expect(heard()).toBe('two')
})

test('stopped while sound still wakes, nothing is heard', async () => {
  const { hearing, told, heard } = setUp()
  void hearing.hear('one', take)
  hearing.stop()
  await settled()
  expect(told).toEqual(['quiet'])
  expect(heard()).toBeUndefined()
})
