/**
 * The one file that touches a folder of the person's own (File System Access, WICG; File System Standard,
 * WHATWG). A folder is chosen in a press of the person, its handle can be kept in the database, and
 * after a reload the browser may want to be asked again.
 */

export type Permission = 'granted' | 'prompt' | 'denied'

/** How a file was when it was looked at or written. */
export interface FileState {
  readonly size: number
  readonly lastModified: number
}

export interface Folder {
  readonly name: string
  /** To be kept in the database. */
  readonly handle: unknown
  readonly permission: () => Promise<Permission>
  /** The browser asks the person; in a press of the person. */
  readonly ask: () => Promise<Permission>
  /** `undefined` where there is no such file. */
  readonly state: (file: string) => Promise<FileState | undefined>
  readonly read: (file: string) => Promise<string>
  /**
   * Replaces the file as a whole: the browser writes beside it and exchanges both when all is written
   * (File System Standard, `createWritable`), so that there is never half a file.
   */
  readonly write: (file: string, parts: Iterable<string>) => Promise<FileState>
}

/** What of the standards the types of the browser do not have yet. */
interface PermissionQuery {
  readonly queryPermission: (wanted: { readonly mode: 'readwrite' }) => Promise<Permission>
  readonly requestPermission: (wanted: { readonly mode: 'readwrite' }) => Promise<Permission>
}
type Handle = FileSystemDirectoryHandle & PermissionQuery
type Picker = (options: {
  readonly id: string
  readonly mode: 'readwrite'
}) => Promise<FileSystemDirectoryHandle>

const picker = (): Picker | undefined => {
  const found: unknown = Reflect.get(globalThis, 'showDirectoryPicker')
  return typeof found === 'function' ? (options) => found.call(globalThis, options) : undefined
}

export const canChooseFolder = (): boolean => picker() !== undefined

/** `undefined` where the person chose none. */
export const chooseFolder = async (): Promise<Folder | undefined> => {
  try {
    return folderOf(await picker()?.({ id: 'passagework', mode: 'readwrite' }))
  } catch (error) {
    // So the standard tells that the person closed the choice.
    if (error instanceof DOMException && error.name === 'AbortError') return undefined
    throw error
  }
}

/** From a handle that was kept; `undefined` where it is none. */
export const folderOf = (handle: unknown): Folder | undefined =>
  isDirectory(handle) ? folderBy(handle) : undefined

const isDirectory = (handle: unknown): handle is Handle =>
  typeof handle === 'object' && handle !== null && 'kind' in handle && handle.kind === 'directory'

const readwrite = { mode: 'readwrite' } as const

const folderBy = (handle: Handle): Folder => ({
  name: handle.name,
  handle,
  permission: () => handle.queryPermission(readwrite),
  ask: () => handle.requestPermission(readwrite),
  state: async (file) => {
    try {
      return stateOf(await (await handle.getFileHandle(file)).getFile())
    } catch (error) {
      if (error instanceof DOMException && error.name === 'NotFoundError') return undefined
      throw error
    }
  },
  read: async (file) => (await (await handle.getFileHandle(file)).getFile()).text(),
  write: async (file, parts) => {
    const entry = await handle.getFileHandle(file, { create: true })
    const writing = await entry.createWritable()
    try {
      for (const part of parts) await writing.write(part)
    } catch (error) {
      await writing.abort()
      throw error
    }
    await writing.close()
    return stateOf(await entry.getFile())
  },
})

const stateOf = ({ size, lastModified }: File): FileState => ({ size, lastModified })
