/** Whether the browser promises not to clear the record by itself when the disk gets full. */
export type Persistence = 'kept' | 'notPromised' | 'unknown'

/**
 * Asks the browser to keep the record for good (Storage Standard, WHATWG); some ask the person, some
 * decide alone, some say no. `manager` is `navigator.storage`, absent outside secure pages.
 */
export const askToPersist = async (
  manager: Pick<StorageManager, 'persist' | 'persisted'> | undefined,
): Promise<Persistence> => {
  if (!manager) return 'unknown'
  try {
    return (await manager.persisted()) || (await manager.persist()) ? 'kept' : 'notPromised'
  } catch {
    return 'unknown'
  }
}

export const explainPersistence = (persistence: Persistence): string => {
  switch (persistence) {
    case 'kept':
      return 'The browser keeps the record until you delete it.'
    case 'notPromised':
      return 'The browser may clear the record when the disk gets full.'
    case 'unknown':
      return 'The browser does not say whether it keeps the record for good.'
  }
}
