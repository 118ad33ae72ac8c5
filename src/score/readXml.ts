import { SaxesParser } from 'saxes'
import type { ReadProblem } from './readProblem'
import type { XmlElement } from './xmlElement'

type Attributes = XmlElement['attributes']

/** What to do with an element that opens: tell its children in turn, take it whole, or leave it out. */
export type Way = 'enter' | 'collect' | 'skip'

export interface XmlVisitor {
  /** `parent` is the innermost element entered, '' at the root. A problem ends the reading. */
  readonly open: (name: string, attributes: Attributes, parent: string) => Way | ReadProblem
  /** An element that was to be collected, with all its children. A problem ends the reading. */
  readonly take: (element: XmlElement, parent: string) => ReadProblem | undefined
}

/** MusicXML nests some ten deep; a file far deeper was made to do harm. */
const deepest = 64
/** Characters of a name that are shown to the person. */
const longestName = 60
/** A piece of text given to the parser at a time; after each it is seen whether to go on. */
const portion = 1 << 16

/**
 * Walks an XML text (XML 1.0), strictly: what is not well-formed is a problem. Nothing outside the
 * file is fetched, and no entity is expanded but the five that XML has; a file that defines entities
 * is refused. Only one collected element stands in memory at a time. The only place that uses saxes.
 */
export const readXml = (text: string, visitor: XmlVisitor): ReadProblem | undefined => {
  const parser = new SaxesParser()
  const walk = walkTags(visitor)
  const begin = countBlanks(text)
  const line = (): number => parser.line + begin.lines
  let problem: ReadProblem | undefined
  let ended = false
  let closed = ''
  const stop = (found: ReadProblem | undefined): void => {
    problem ??= found
  }
  parser.on('error', ({ message }) => {
    const what = message.replace(/^\d+:\d+: /, '').replace(/\.$/, '')
    stop(
      ended
        ? { kind: 'cutXml', line: line(), inside: walk.inside() }
        : { kind: 'brokenXml', damage: damageOf(what, closed), line: line() },
    )
  })
  parser.on('doctype', (doctype) => {
    if (/<!ENTITY/i.test(doctype)) stop({ kind: 'entities', line: line() })
  })
  parser.on('opentag', ({ name, attributes }) => {
    if (!problem) stop(walk.open(name, attributes, line()))
  })
  parser.on('text', (words) => walk.text(words))
  parser.on('cdata', (words) => walk.text(words))
  parser.on('closetag', ({ name }) => {
    closed = name.slice(0, longestName)
    if (!problem) stop(walk.close())
  })
  for (let at = begin.characters; at < text.length && !problem; at += portion)
    parser.write(text.slice(at, at + portion))
  ended = true
  if (!problem) parser.close()
  return problem
}

/** XML allows no blanks before its declaration; but files have them, and they do no harm. */
const countBlanks = (text: string): { readonly characters: number; readonly lines: number } => {
  let characters = 0
  let lines = 0
  for (; ' \t\r\n\uFEFF'.includes(text[characters] ?? '-'); characters++)
    if (text[characters] === '\n') lines++
  return { characters, lines }
}

/** saxes closes an element before it complains that it should not have been closed. */
const damageOf = (message: string, closed: string): Damage => {
  if (message === 'undefined entity') return { kind: 'unknownSign' }
  return message === 'unexpected close tag'
    ? { kind: 'unclosed', name: closed }
    : { kind: 'malformed', message: message.slice(0, 80) }
}

type Damage = Extract<ReadProblem, { kind: 'brokenXml' }>['damage']

interface Growing extends XmlElement {
  readonly children: Growing[]
  text: string
}

const walkTags = (visitor: XmlVisitor) => {
  /** The elements entered, and after them those being collected; `undefined` for each one skipped. */
  const open: (Growing | undefined)[] = []
  let entered = 0
  const parentName = (): string => open[entered - 1]?.name ?? ''
  return {
    /** The innermost element that is not skipped; '' outside of all. */
    inside: (): string => (open.findLast((e) => e !== undefined)?.name ?? '').slice(0, longestName),
    text: (words: string): void => {
      const element = open.length > entered ? open.at(-1) : undefined
      if (element) element.text += words
    },
    open: (name: string, attributes: Attributes, line: number): ReadProblem | undefined => {
      if (open.length === deepest) return { kind: 'tooDeep', line, limit: deepest }
      const element: Growing = { name, attributes, children: [], text: '' }
      if (open.length > entered) {
        const above = open.at(-1)
        above?.children.push(element)
        open.push(above && element)
        return undefined
      }
      const way = visitor.open(name, attributes, parentName())
      if (typeof way === 'object') return way
      if (way === 'enter') entered++
      open.push(way === 'skip' ? undefined : element)
      return undefined
    },
    close: (): ReadProblem | undefined => {
      const element = open.pop()
      if (open.length < entered) {
        entered--
        return undefined
      }
      return element && open.length === entered ? visitor.take(element, parentName()) : undefined
    },
  }
}
