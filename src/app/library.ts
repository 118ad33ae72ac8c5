import { createStore, type StoreApi } from 'zustand/vanilla'
import type { PieceId } from '@/music/units'
import { explainReadProblem, largestFile } from '@/score/readProblem'
import type { Ports, ReadPiece, Sample, Suggestion } from './ports'

/** A piece as listed. */
export interface Listed {
  readonly id: PieceId
  readonly title: string
  readonly remark: string
  readonly from: 'sample' | 'file'
}

export interface OpenPiece extends ReadPiece {
  readonly suggestion?: Suggestion
}

export interface LibraryState {
  readonly loading: boolean
  readonly listed: readonly Listed[]
  /** Why a file could not be taken in or opened, in one sentence. */
  readonly problem?: string | undefined
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
  /** Reads a listed piece; `undefined` when there is none by that name or it cannot be read (see `problem`). */
  readonly open: (id: PieceId) => Promise<OpenPiece | undefined>
  /** Takes a file in; gives the piece, or sets `problem`. */
  readonly add: (file: ChosenFile) => Promise<OpenPiece | undefined>
  readonly forgetProblem: () => void
}

export const createLibrary = (ports: Ports): Library => {
  const store = createStore<LibraryState>(() => ({ loading: true, listed: [] }))
  const read = new Map<PieceId, OpenPiece>()

  const list = (piece: Listed): void =>
    store.setState(({ listed }) =>
      listed.some((known) => known.id === piece.id) ? {} : { listed: [...listed, piece] },
    )
  const complain = (what: string, why: string): undefined => {
    store.setState({ problem: `${what}: ${why}` })
    return undefined
  }
  const readFile = async (bytes: Uint8Array, fileName: string): Promise<ReadPiece | undefined> => {
    const result = await ports.readPiece(bytes, fileName)
    return result.ok ? result.value : complain(fileName, explainReadProblem(result.reason))
  }
  const listSample = async (sample: Sample): Promise<void> => {
    const piece = await readFile(sample.bytes, sample.fileName)
    if (!piece) return
    const { title, remark, suggestion } = sample
    read.set(piece.score.id, { ...piece, suggestion })
    list({ id: piece.score.id, title, remark, from: 'sample' })
  }

  return {
    store,
    load: async () => {
      for (const sample of await ports.samples()) await listSample(sample)
      const stored = await ports.storage.pieces()
      if (!stored.ok) complain('Your pieces', stored.reason)
      else
        for (const { id, title, fileName } of stored.value)
          list({ id, title, remark: fileName, from: 'file' })
      store.setState({ loading: false })
    },
    open: async (id) => {
      const known = read.get(id)
      if (known) return known
      const stored = await ports.storage.piece(id)
      if (!stored.ok) return complain('Your pieces', stored.reason)
      if (!stored.value) return undefined
      const piece = await readFile(stored.value.bytes, stored.value.fileName)
      if (piece) read.set(id, piece)
      return piece
    },
    add: async (file) => {
      store.setState({ problem: undefined })
      const fileName = file.name
      if (file.size > largestFile)
        return complain(fileName, explainReadProblem({ kind: 'tooLarge', bytes: file.size }))
      const bytes = await file.read()
      const piece = await readFile(bytes, fileName)
      if (!piece) return undefined
      const { id, title } = piece.score
      const known = read.get(id)
      if (known) return known
      const addedAtEpochMs = ports.wallClock()
      const put = await ports.storage.putPiece({ id, title, fileName, bytes, addedAtEpochMs })
      if (!put.ok) complain(fileName, put.reason)
      read.set(id, piece)
      list({ id, title, remark: fileName, from: 'file' })
      return piece
    },
    forgetProblem: () => store.setState({ problem: undefined }),
  }
}
