import { chunkId, type ChunkId } from './units'

/** In which form a chunk is played: as it is written, or as one of its variants. */
export const forms = [
  'asWritten',
  'longShort',
  'shortLong',
  'stopAfter3',
  'stopAfter4',
  'accentEvery3',
  'accentEvery4',
  'blocked',
] as const
export type Form = (typeof forms)[number]

/** Whether the onsets of a form are those that are written, one for one: as chords several are one. */
const keepOnsets: Readonly<Record<Form, boolean>> = {
  asWritten: true,
  longShort: true,
  shortLong: true,
  stopAfter3: true,
  stopAfter4: true,
  accentEvery3: true,
  accentEvery4: true,
  blocked: false,
}
export const keepsOnsets = (form: Form): boolean => keepOnsets[form]

/** Names a chunk in a form: ('p1:0-1:right', 'longShort') -> 'p1:0-1:right~longShort'; as written it keeps its name. */
export const formedId = (written: ChunkId, form: Form): ChunkId =>
  form === 'asWritten' ? written : chunkId(`${written}~${form}`)

/** The inverse; `undefined` when it names a form that there is not. */
export const splitFormedId = (
  id: ChunkId,
): { readonly written: ChunkId; readonly form: Form } | undefined => {
  const [written = '', word = 'asWritten', ...more] = id.split('~')
  const form = parseForm(word)
  return form && more.length === 0 ? { written: chunkId(written), form } : undefined
}

/** 'longShort' -> itself; `undefined` when it is no form. */
export const parseForm = (word: string): Form | undefined => forms.find((form) => form === word)
