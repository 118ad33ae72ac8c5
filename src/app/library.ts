import { createStore, type StoreApi } from 'zustand/vanilla'
import type { PieceId } from '@/music/units'
import type { Carried } from '@/review/carryOver'
import { largestFile, tooLarge } from '@/score/largestFile'
import { compareWith } from './editions'
import type { LibraryProblem } from './libraryProblem'
import type { Ports, ReadPiece, Sample, StoredPiece, Suggestion } from './ports'

/** A piece as listed. */
export interface Listed {
  readonly id: PieceId
  readonly title: string
  readonly composer?: string
  readonly fileName: string
  readonly from: 'sample' | 'file'
}

export interface OpenPiece extends ReadPiece {
  /** Chunks of older editions whose record counts for chunks of this one. */
  readonly carried?: readonly Carried[]
  readonly suggestion?: Suggestion
}

export interface LibraryState {
  readonly loading: boolean
  readonly listed: readonly Listed[]
  readonly problem?: LibraryProblem | undefined
}

/** A file compared with a listed piece that it is to replace. */
export interface BetterEdition {
  readonly replaces: PieceId
  readonly piece: StoredPiece
  readonly open: OpenPiece
  /** How many chunks have been practised, and of how many the notes agree. */
  readonly practised: number
  readonly agreeing: number
}

/** A file that the person chose. */
export interface ChosenFile {
  readonly name: string
  /** Bytes; a file that is too large is refused unread. */
  readonly size: number
  readonly read: () => Promise<Uint8Array>
}

export interface Library {
  readonly store: StoreApi<LibraryState>
  /** Lists the samples and the person's own pieces. */
  readonly load: () => Promise<void>
  /** After pieces have come in from elsewhere: lists what is stored, and reads these anew when they are opened. */
  readonly refresh: (pieces: readonly PieceId[]) => Promise<void>
  /** Reads a listed piece; `undefined` when there is none by that name or it cannot be read (see `problem`). */
  readonly open: (id: PieceId) => Promise<OpenPiece | undefined>
  /** Takes a file in; gives the piece, or sets `problem`. */
  readonly add: (file: ChosenFile) => Promise<OpenPiece | undefined>
  /** Another title for a piece of the person's own. */
  readonly rename: (id: PieceId, title: string) => Promise<void>
  /** The piece and its file go; the journal stays. */
  readonly remove: (id: PieceId) => Promise<void>
  /**
   * Other parts of the piece's file, by their indices. What sounds then is another piece, which takes
   * the place of this one in the list; the record of this one stays in the journal.
   */
  readonly takeParts: (
    id: PieceId,
    parts: readonly number[],
  ) => Promise<{ readonly piece: OpenPiece; readonly fileName: string } | undefined>
  /** Reads another edition of a piece and tells how much of the record holds for it; changes nothing. */
  readonly compareEdition: (id: PieceId, file: ChosenFile) => Promise<BetterEdition | undefined>
  /** The better edition takes the place of the piece, under its title, with the record that holds. */
  readonly replace: (edition: BetterEdition) => Promise<boolean>
  readonly forgetProblem: () => void
}

export const createLibrary = (ports: Ports): Library => {
  const store = createStore<LibraryState>(() => ({ loading: true, listed: [] }))
  const read = new Map<PieceId, OpenPiece>()

  const list = (piece: Listed): void =>
    store.setState(({ listed }) =>
      listed.some((known) => known.id === piece.id) ? {} : { listed: [...listed, piece] },
    )
  const complain = (problem: LibraryProblem): undefined => {
    store.setState({ problem })
    return undefined
  }
  const readFile = async (
    bytes: Uint8Array,
    fileName: string,
    parts?: readonly number[],
  ): Promise<ReadPiece | undefined> => {
    const result = await ports.readPiece(bytes, fileName, parts)
    return result.ok ? result.value : complain({ kind: 'unread', fileName, reason: result.reason })
  }
  const readChosen = async (
    file: ChosenFile,
  ): Promise<{ readonly piece: ReadPiece; readonly bytes: Uint8Array } | undefined> => {
    store.setState({ problem: undefined })
    if (file.size > largestFile)
      return complain({ kind: 'unread', fileName: file.name, reason: tooLarge(file.size) })
    const bytes = await file.read()
    const piece = await readFile(bytes, file.name)
    return piece && { piece, bytes }
  }
  const listSample = async (sample: Sample): Promise<void> => {
    const piece = await readFile(sample.bytes, sample.fileName)
    if (!piece) return
    const { title, fileName, suggestion } = sample
    read.set(piece.score.id, { ...piece, suggestion })
    list({ id: piece.score.id, title, fileName, from: 'sample' })
  }
  const find = async (id: PieceId): Promise<StoredPiece | undefined> => {
    const stored = await ports.storage.piece(id)
    return stored.ok ? stored.value : complain({ kind: 'unstored', why: stored.reason })
  }
  /** Stores a piece; tells whether it is there. */
  const put = async (piece: StoredPiece): Promise<boolean> => {
    const stored = await ports.storage.putPiece(piece)
    if (!stored.ok) complain({ kind: 'unstored', fileName: piece.fileName, why: stored.reason })
    return stored.ok
  }
  const drop = async (id: PieceId): Promise<boolean> => {
    const removed = await ports.storage.removePiece(id)
    if (!removed.ok) complain({ kind: 'unstored', why: removed.reason })
    else read.delete(id)
    return removed.ok
  }
  const isSample = (id: PieceId): boolean =>
    store.getState().listed.some((known) => known.id === id && known.from === 'sample')
  /** Puts other entries in the place of a listed piece, each of them listed once. */
  const relist = (id: PieceId, entries: readonly Listed[]): void =>
    store.setState(({ listed }) => ({
      listed: listed
        .filter((known) => known.id === id || entries.every((entry) => entry.id !== known.id))
        .flatMap((known) => (known.id === id ? entries : [known])),
    }))

  return {
    store,
    load: async () => {
      for (const sample of await ports.samples()) await listSample(sample)
      const stored = await ports.storage.pieces()
      if (!stored.ok) complain({ kind: 'unstored', why: stored.reason })
      else for (const piece of stored.value) list(listedOf(piece))
      store.setState({ loading: false })
    },
    refresh: async (pieces) => {
      for (const id of pieces) if (!isSample(id)) read.delete(id)
      const stored = await ports.storage.pieces()
      if (!stored.ok) return complain({ kind: 'unstored', why: stored.reason })
      const isListed = new Set(store.getState().listed.map(({ id }) => id))
      for (const piece of stored.value) {
        if (!isListed.has(piece.id)) list(listedOf(piece))
        else if (!isSample(piece.id)) relist(piece.id, [listedOf(piece)])
      }
    },
    open: async (id) => {
      const known = read.get(id)
      if (known) return known
      const stored = await find(id)
      const piece = stored && (await readFile(stored.bytes, stored.fileName, stored.parts))
      if (!piece) return undefined
      const open = openOf(piece, stored)
      read.set(id, open)
      return open
    },
    add: async (file) => {
      const chosen = await readChosen(file)
      if (!chosen) return undefined
      const { piece, bytes } = chosen
      const fileName = file.name
      const { id } = piece.score
      if (isSample(id)) return read.get(id)
      // The same music once more: the newer file, under the title and at the place of the older.
      const known = await find(id)
      const title = known?.title ?? piece.score.title
      const addedAtEpochMs = known?.addedAtEpochMs ?? ports.wallClock()
      const stored = {
        id,
        title,
        ...composerOf(piece),
        fileName,
        bytes,
        addedAtEpochMs,
        ...(known ? carriedOf(known) : {}),
      }
      await put(stored)
      const open = openOf(piece, stored)
      read.set(id, open)
      if (known) relist(id, [listedOf(stored)])
      else list(listedOf(stored))
      return open
    },
    rename: async (id, title) => {
      const stored = await find(id)
      if (!stored || !(await put({ ...stored, title }))) return
      const open = read.get(id)
      if (open) read.set(id, withTitle(open, title))
      relist(id, [listedOf({ ...stored, title })])
    },
    remove: async (id) => {
      if (await drop(id)) relist(id, [])
    },
    takeParts: async (id, parts) => {
      const stored = await find(id)
      const piece = stored && (await readFile(stored.bytes, stored.fileName, parts))
      if (!piece) return undefined
      // Other parts are other music: nothing of an older edition's record holds for them.
      const { carried: _carried, ...rest } = stored
      const other = { ...rest, id: piece.score.id, parts }
      if (!(await put(other))) return undefined
      if (other.id !== id) await drop(id)
      const open = openOf(piece, other)
      read.set(other.id, open)
      relist(id, [listedOf(other)])
      return { piece: open, fileName: stored.fileName }
    },
    compareEdition: async (id, file) => {
      const chosen = await readChosen(file)
      const stored = chosen && (await find(id))
      const old = stored && (await readFile(stored.bytes, stored.fileName, stored.parts))
      if (!chosen || !stored || !old) return undefined
      const { piece, bytes } = chosen
      if (isSample(piece.score.id)) return complain({ kind: 'ofProgram', fileName: file.name })
      const held = await compareWith(ports.storage, openOf(old, stored), piece.score)
      if (!held.ok) return complain({ kind: 'unstored', fileName: file.name, why: held.reason })
      const { practised, carried } = held.value
      const { title, addedAtEpochMs } = stored
      const isSame = piece.score.id === id
      const better: StoredPiece = {
        id: piece.score.id,
        title,
        ...composerOf(piece),
        fileName: file.name,
        bytes,
        addedAtEpochMs,
        ...carriedOf(isSame ? stored : { carried }),
      }
      const agreeing = new Set(carried.map(({ to }) => to)).size
      return { replaces: id, piece: better, open: openOf(piece, better), practised, agreeing }
    },
    replace: async ({ replaces, piece, open }) => {
      if (!(await put(piece)) || (piece.id !== replaces && !(await drop(replaces)))) return false
      read.set(piece.id, open)
      relist(replaces, [listedOf(piece)])
      return true
    },
    forgetProblem: () => store.setState({ problem: undefined }),
  }
}

const composerOf = ({
  composer,
}: {
  readonly composer?: string
}): { readonly composer?: string } => (composer ? { composer } : {})

const listedOf = (piece: Pick<StoredPiece, 'id' | 'title' | 'composer' | 'fileName'>): Listed => ({
  id: piece.id,
  title: piece.title,
  ...composerOf(piece),
  fileName: piece.fileName,
  from: 'file',
})

const carriedOf = ({ carried = [] }: Pick<StoredPiece, 'carried'>): Pick<StoredPiece, 'carried'> =>
  carried.length > 0 ? { carried } : {}

const openOf = (piece: ReadPiece, stored: Pick<StoredPiece, 'title' | 'carried'>): OpenPiece => ({
  ...withTitle(piece, stored.title),
  ...carriedOf(stored),
})

/** The person's own title stands above that of the file. */
const withTitle = (piece: OpenPiece, title: string): OpenPiece => ({
  ...piece,
  score: { ...piece.score, title },
})
