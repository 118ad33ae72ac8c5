/**
 * The text of an entry in the notebook with its few marks, as data: a view shows nothing but these.
 *
 *   *softly*                    emphasis
 *   - sing it                   a list, one item a line
 *   [the edition](https://…)    a link with words of its own; a bare address is one too
 *
 * Whatever else stands there is text, markup of a page above all.
 */
export type Span =
  | { readonly kind: 'plain' | 'emphasis'; readonly text: string }
  /** `address` begins with http: or https:, and is written in ASCII, so that it shows where it leads. */
  | { readonly kind: 'link'; readonly text: string; readonly address: string }

export type Line = readonly Span[]

export type Block =
  | { readonly kind: 'paragraph'; readonly lines: readonly Line[] }
  | { readonly kind: 'list'; readonly items: readonly Line[] }

/** 'Slower.\n\n- sing\n- play' -> a paragraph of one line, a list of two items. */
export const parseNotebookText = (text: string): readonly Block[] => {
  const blocks: Block[] = []
  let open: { kind: Block['kind']; lines: Line[] } | undefined
  const close = (): void => {
    if (open?.kind === 'list') blocks.push({ kind: 'list', items: open.lines })
    if (open?.kind === 'paragraph') blocks.push({ kind: 'paragraph', lines: open.lines })
    open = undefined
  }
  for (const line of text.split(/\r\n|[\r\n]/)) {
    const [, item] = /^\s*[-*•]\s+(\S.*)$/.exec(line) ?? []
    const kind = item === undefined ? 'paragraph' : 'list'
    if (line.trim() === '' || open?.kind !== kind) close()
    if (line.trim() === '') continue
    open ??= { kind, lines: [] }
    open.lines.push(parseLine(item ?? line))
  }
  close()
  return blocks
}

/** Each alternative is bounded by what it may not hold, so that no text takes long to read. */
const marked =
  /\[([^[\]\n]{1,300})\]\((https?:\/\/[^\s()]{1,2000})\)|(https?:\/\/[^\s<>"]{1,2000})|\*([^\s*](?:[^*]{0,300}[^\s*])?)\*/gi

const parseLine = (line: string): Line => {
  const spans: Span[] = []
  let end = 0
  const plain = (to: number): void => {
    if (to > end) spans.push({ kind: 'plain', text: line.slice(end, to) })
  }
  for (const match of line.matchAll(marked)) {
    const [whole, words, target, bare, emphasis] = match
    const span = emphasis === undefined ? linkOf(words, target ?? bare ?? '') : undefined
    const read: Span | undefined =
      emphasis === undefined ? span?.link : { kind: 'emphasis', text: emphasis }
    if (!read) continue
    plain(match.index)
    spans.push(read)
    end = match.index + whole.length - (span?.left ?? 0)
  }
  plain(line.length)
  return spans
}

/** What ends a sentence rather than an address. */
const trailing = /[.,;:!?)\]}'*]+$/

/** `left` is how many letters at the end are no part of it. */
const linkOf = (
  words: string | undefined,
  target: string,
): { readonly link: Span; readonly left: number } | undefined => {
  const written = words === undefined ? target.replace(trailing, '') : target
  const address = addressOf(written)
  if (address === undefined) return undefined
  const left = target.length - written.length
  return { link: { kind: 'link', text: words ?? address, address }, left }
}

/** An address of the web as browsers write it; names and passwords in it would hide where it leads. */
const addressOf = (written: string): string | undefined => {
  if (!URL.canParse(written)) return undefined
  const { protocol, username, password, href } = new URL(written)
  const isWeb = protocol === 'http:' || protocol === 'https:'
  return isWeb && username === '' && password === '' ? href : undefined
}
