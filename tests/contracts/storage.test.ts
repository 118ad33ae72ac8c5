import 'fake-indexeddb/auto'
import { createMemoryStorage } from '@/storage/memory'
import { openStorage } from '@/storage/indexedDb'
import { describeStorage } from './storageContract'

let count = 0

describeStorage('the storage in memory', () => Promise.resolve(createMemoryStorage()))
describeStorage('the storage in the database', async () => {
  const opened = await openStorage(`contract ${count++}`)
  if (!opened.ok) throw new Error(opened.reason.kind)
  return opened.value
})
