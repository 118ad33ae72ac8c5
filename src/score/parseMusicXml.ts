import { failed, ok, type Result } from '@/music/result'
import type { MusicXmlFile, XmlEvent, XmlMeasure, XmlPart } from './musicXml'
import { isPianoPart, readAttributes } from './musicXmlAttributes'
import { readBarline, readDirection, readSound } from './musicXmlDirection'
import { readNote } from './musicXmlNote'
import type { ReadProblem } from './readProblem'
import { readXml } from './readXml'
import { childrenOf, numberIn, oneLine, textIn, type XmlElement } from './xmlElement'

/** Far above any piano piece, and still held in memory without trouble: an hour of orchestra has some 200,000. */
const mostEvents = 500_000

/**
 * What a MusicXML file says (4.0 and older), score-partwise or score-timewise: the one has measures
 * in parts, the other parts in measures, and the events in them are the same.
 */
export const parseMusicXml = (text: string): Result<MusicXmlFile, ReadProblem> => {
  const head = new Map<string, XmlElement>()
  const parts = collectParts()
  let root = ''
  let events = 0
  const problem = readXml(text, {
    open: (name, attributes, parent) => {
      if (parent === '') {
        root = name
        return roots.has(name) ? 'enter' : { kind: 'otherXml', root: name.slice(0, 60) }
      }
      if (name === 'part' || name === 'measure') {
        parts.open(name, attributes)
        return 'enter'
      }
      if (roots.has(parent)) return headNames.has(name) ? 'collect' : 'skip'
      return eventReaders.has(name) ? 'collect' : 'skip'
    },
    take: (element, parent) => {
      if (roots.has(parent)) head.set(element.name, element)
      else {
        events++
        parts.add(eventReaders.get(element.name)?.(element) ?? [])
      }
      return events > mostEvents ? { kind: 'tooManyEvents', limit: mostEvents } : undefined
    },
  })
  if (problem) return failed(problem)
  if (root === '') return failed({ kind: 'cutXml', line: 1, inside: '' })
  return ok({ title: titleOf(head), composer: composerOf(head), parts: parts.named(head) })
}

const roots = new Set(['score-partwise', 'score-timewise'])
const headNames = new Set(['work', 'movement-title', 'identification', 'part-list'])

const move = (element: XmlElement, sign: 1 | -1): readonly XmlEvent[] => [
  { kind: 'move', divisions: sign * Math.max(0, numberIn(element, 'duration') ?? 0) },
]

const eventReaders = new Map<string, (element: XmlElement) => readonly XmlEvent[]>([
  ['note', (element) => [readNote(element)]],
  ['backup', (element) => move(element, -1)],
  ['forward', (element) => move(element, 1)],
  ['attributes', readAttributes],
  ['direction', readDirection],
  ['sound', (element) => readSound(element)],
  ['barline', readBarline],
])

interface Measures {
  readonly measures: (XmlMeasure & { readonly events: XmlEvent[] })[]
}

/** Puts events into the part and measure that were opened last, whichever of the two is the outer one. */
const collectParts = () => {
  const byId = new Map<string, Measures>()
  let part = ''
  let measure: XmlElement['attributes'] = {}
  const begin = (): void => {
    const { measures } = byId.get(part) ?? { measures: [] }
    byId.set(part, { measures })
    measures.push({
      number: measure.number ?? '',
      implicit: measure.implicit === 'yes',
      events: [],
    })
  }
  let outer: 'part' | 'measure' | undefined
  return {
    open: (name: 'part' | 'measure', attributes: XmlElement['attributes']): void => {
      outer ??= name
      if (name === 'part') part = attributes.id ?? ''
      else measure = attributes
      if (name !== outer) begin()
    },
    add: (events: readonly XmlEvent[]): void => {
      byId
        .get(part)
        ?.measures.at(-1)
        ?.events.push(...events)
    },
    /** In the order of the file. */
    named: (head: ReadonlyMap<string, XmlElement>): XmlPart[] => {
      const list = head.get('part-list')
      const scoreParts = new Map(
        (list ? childrenOf(list, 'score-part') : []).map((p) => [p.attributes.id, p]),
      )
      return [...byId].map(([id, { measures }]) => {
        const scorePart = scoreParts.get(id)
        const name = scorePart ? textIn(scorePart, 'part-name').slice(0, longestName) : ''
        return { name, piano: scorePart !== undefined && isPianoPart(scorePart), measures }
      })
    },
  }
}

/** Characters: more than fits on a line. */
const longestName = 200

const titleOf = (head: ReadonlyMap<string, XmlElement>): string => {
  const work = head.get('work')
  const titles = [
    work ? textIn(work, 'work-title') : '',
    oneLine(head.get('movement-title')?.text ?? ''),
  ]
  return [...new Set(titles)]
    .filter((title) => title !== '')
    .join(': ')
    .slice(0, longestName)
}

const composerOf = (head: ReadonlyMap<string, XmlElement>): string => {
  const identification = head.get('identification')
  const creators = identification ? childrenOf(identification, 'creator') : []
  const composer = creators.find(({ attributes }) => attributes.type === 'composer')
  return oneLine(composer?.text ?? '').slice(0, longestName)
}
