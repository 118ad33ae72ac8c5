import type { Hand } from '@/music/music'

/** Letters and where they stand. */
export interface Placed {
  readonly text: string
  /** Both count from 1. */
  readonly line: number
  readonly column: number
}

/** What stands between blanks in a line of typed music; the length after a colon is apart. */
export type TypedWord = Placed & { readonly length?: Placed } & (
    | { readonly kind: 'word' }
    | { readonly kind: 'bar' }
    | { readonly kind: 'chord'; readonly inner: readonly Placed[] }
  )

export interface TypedLine {
  /** Where the line begins with one, as 'left:'. */
  readonly hand?: Hand
  readonly words: readonly TypedWord[]
  /** A chord that does not end. */
  readonly open?: TypedWord
}

/** 'left: [C3 E3]:2 | r' -> the hand left and three words. */
export const cutLine = (text: string, line: number): TypedLine => {
  const [prefix = '', name] = /^\s*(right|left)\s*:/i.exec(text) ?? []
  const hand = name === undefined ? undefined : name.toLowerCase() === 'left' ? 'left' : 'right'
  const words: TypedWord[] = []
  const cut =
    /\|+|\[([^\]|]*)(\]?)(?::([^\s|[\]]*))?|([^\s|[\]]*?)(?::([^\s|[\]]*))(?=[\s|[\]]|$)|[^\s|[\]]+|\]/g
  cut.lastIndex = prefix.length
  for (let found = cut.exec(text); found; found = cut.exec(text)) {
    const [all, inner, close, chordLength, plain, length] = found
    const place = (from: number, part: string): Placed => ({
      text: part,
      line,
      column: found.index + from + 1,
    })
    if (all.startsWith('|')) words.push({ kind: 'bar', ...place(0, all) })
    else if (inner !== undefined) {
      const chord: TypedWord = {
        kind: 'chord',
        ...place(0, all),
        inner: [...inner.matchAll(/\S+/g)].map((each) => place(1 + each.index, each[0])),
        ...(chordLength === undefined
          ? {}
          : { length: place(all.length - chordLength.length, chordLength) }),
      }
      if (close === '') return { ...(hand ? { hand } : {}), words, open: chord }
      words.push(chord)
    } else if (plain !== undefined && length !== undefined)
      words.push({
        kind: 'word',
        ...place(0, plain),
        length: place(all.length - length.length, length),
      })
    else words.push({ kind: 'word', ...place(0, all) })
    if (all === '') cut.lastIndex++
  }
  return { ...(hand ? { hand } : {}), words }
}
