import type { Score } from '@/music/music'
import { parseTypedMusic } from '@/score/parseTypedMusic'
import { explainReadProblem } from '@/score/readProblem'
import { scoreTyped, writeTypedFile } from '@/score/readTypedPiece'
import type { TypedProblem } from '@/score/typedMusic'
import type { ChosenFile } from './library'

/** What a text that is being typed says so far. */
export type Typed =
  | { readonly kind: 'empty' }
  | { readonly kind: 'music'; readonly score: Score }
  | { readonly kind: 'problem'; readonly problem: TypedProblem }

export const untitled = 'Fragment'

export const readTyped = (text: string, title: string): Typed => {
  if (text.trim() === '') return { kind: 'empty' }
  const music = parseTypedMusic(text)
  if (!music.ok) return { kind: 'problem', problem: music.reason }
  const read = scoreTyped(music.value, title.trim() || untitled)
  if (read.ok) return { kind: 'music', score: read.value.score }
  const sentence = explainReadProblem(read.reason)
  return { kind: 'problem', problem: { line: 1, column: 1, width: 1, sentence } }
}

/** The text as the file of a piece, to be taken in like any other. */
export const typedFile = (text: string, title: string): ChosenFile => {
  const name = title.trim() || untitled
  const bytes = writeTypedFile(name, text)
  return { name: fileNameOf(name, 'txt'), size: bytes.length, read: () => Promise.resolve(bytes) }
}

/** A title as the name of a file: what no system allows in one is left out. */
export const fileNameOf = (title: string, ending: string): string =>
  `${title
    .replace(/[\p{Cc}/\\:*?"<>|]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim()}.${ending}`
