import { storageText } from '@/text/storage'

/** What is known of how the browser keeps what this site stores. */
export interface Keeping {
  /** The browser promises not to clear the record by itself when the disk gets full. */
  readonly promised: boolean
  /** The same as a sentence. */
  readonly words: string
  /** Rounded by the browser; absent where it does not say. */
  readonly room?: { readonly usedBytes: number; readonly freeBytes: number }
}

/** `navigator.storage` (Storage Standard, WHATWG), absent outside secure pages. */
type Manager = Pick<StorageManager, 'persist' | 'persisted' | 'estimate'> | undefined

/** Looks without asking. */
export const lookAtKeeping = (manager: Manager): Promise<Keeping> =>
  keepingBy(manager, (own) => own.persisted())

/** Asks the browser to keep the record for good; some ask the person, some decide alone, some say no. */
export const askToPersist = (manager: Manager): Promise<Keeping> =>
  keepingBy(manager, async (own) => (await own.persisted()) || own.persist())

const keepingBy = async (
  manager: Manager,
  promise: (manager: NonNullable<Manager>) => Promise<boolean>,
): Promise<Keeping> => {
  const unknown = { promised: false, words: storageText.keeping.unknown }
  if (!manager) return unknown
  try {
    const promised = await promise(manager)
    const { usage, quota } = await manager.estimate()
    const words = storageText.keeping[promised ? 'promised' : 'notPromised']
    if (usage === undefined || quota === undefined) return { promised, words }
    const room = { usedBytes: usage, freeBytes: Math.max(0, quota - usage) }
    return { promised, words, room }
  } catch {
    // A browser that fails to answer does not say, and that is what the person is told.
    return unknown
  }
}
