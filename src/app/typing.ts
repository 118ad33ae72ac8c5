import type { Score } from '@/music/music'
import { parseTypedMusic } from '@/score/parseTypedMusic'
import type { ReadProblem } from '@/score/readProblem'
import { scoreTyped, writeTypedFile } from '@/score/readTypedPiece'
import type { TypedProblem } from '@/score/typedMusic'
import { writeText } from '@/text/write'
import type { ChosenFile } from './library'

/** What a text that is being typed says so far. */
export type Typed =
  | { readonly kind: 'empty' }
  | { readonly kind: 'music'; readonly score: Score }
  | { readonly kind: 'problem'; readonly problem: TypedProblem }
  /** Every word of it can be read, but no score can be made of them. */
  | { readonly kind: 'unsound'; readonly reason: ReadProblem }

export const readTyped = (text: string, title: string): Typed => {
  if (text.trim() === '') return { kind: 'empty' }
  const music = parseTypedMusic(text)
  if (!music.ok) return { kind: 'problem', problem: music.reason }
  const read = scoreTyped(music.value, title.trim() || writeText.untitled)
  return read.ok
    ? { kind: 'music', score: read.value.score }
    : { kind: 'unsound', reason: read.reason }
}

/** The text as the file of a piece, to be taken in like any other. */
export const typedFile = (text: string, title: string): ChosenFile => {
  const name = title.trim() || writeText.untitled
  const bytes = writeTypedFile(name, text)
  return { name: fileNameOf(name, 'txt'), size: bytes.length, read: () => Promise.resolve(bytes) }
}

/** A title as the name of a file: what no system allows in one is left out. */
export const fileNameOf = (title: string, ending: string): string =>
  `${title
    .replace(/[\p{Cc}/\\:*?"<>|]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim()}.${ending}`
