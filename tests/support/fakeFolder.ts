import type { FileState, Folder, Permission } from '@/storage/folder'

/** A folder in memory that a test can take away, fill up, or let somebody else write into. */
export interface FakeFolder extends Folder {
  readonly files: Map<string, string>
  /** Names of the files in the order in which they were written. */
  readonly written: string[]
  /** How many files were read as a whole. */
  readonly reads: () => number
  readonly putByOther: (file: string, text: string) => void
  readonly permit: (now: Permission, answer?: Permission) => void
  /** From now on each write fails like this, in the middle; `undefined` and it succeeds again. */
  readonly failWith: (error: Error | undefined) => void
}

export const createFakeFolder = (name = 'Piano'): FakeFolder => {
  const files = new Map<string, string>()
  const changed = new Map<string, number>()
  const written: string[] = []
  let permission: Permission = 'granted'
  let answer: Permission = 'granted'
  let failure: Error | undefined
  let moments = 0
  let reads = 0
  const put = (file: string, text: string): void => {
    files.set(file, text)
    changed.set(file, ++moments)
  }
  const stateOf = (file: string): FileState | undefined => {
    const text = files.get(file)
    if (text === undefined) return undefined
    const { length } = new TextEncoder().encode(text)
    return { size: length, lastModified: changed.get(file) ?? 0 }
  }
  return {
    name,
    handle: { kind: 'directory', name },
    files,
    written,
    reads: () => reads,
    putByOther: put,
    permit: (now, then = now) => {
      permission = now
      answer = then
    },
    failWith: (error) => {
      failure = error
    },
    permission: () => Promise.resolve(permission),
    ask: () => {
      permission = answer
      return Promise.resolve(answer)
    },
    state: (file) => Promise.resolve(stateOf(file)),
    read: (file) => {
      reads++
      return Promise.resolve(files.get(file) ?? '')
    },
    write: (file, parts) => {
      if (failure) return Promise.reject(failure)
      put(file, [...parts].join(''))
      written.push(file)
      return Promise.resolve(stateOf(file) ?? { size: 0, lastModified: 0 })
    },
  }
}
