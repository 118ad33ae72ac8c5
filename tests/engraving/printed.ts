/** What MEI prints, staff by staff and bar by bar, whoever wrote it. */
import { SaxesParser } from 'saxes'

/**
 * Each layer of each bar of each staff as a line of words: 'C5+Eb5:4.' is a chord of a dotted quarter,
 * '~' behind it a tie, 'r:8' a rest, '3(…)' a triplet, '[…]' a beam. Pitches are those that sound,
 * as they are spelled. Spaces are left out.
 */
export const printed = (mei: string, { beams = true } = {}): string[][] => {
  const root = parse(mei)
  const tied = new Set(all(root, 'tie').map((tie) => tie.attributes.startid?.slice(1)))
  const word = (node: Node): string => {
    switch (node.name) {
      case 'note':
        return `${pitch(node)}:${value(node)}${tied.has(node.attributes['xml:id']) ? '~' : ''}`
      case 'chord': {
        const heads = all(node, 'note')
        const isTied = heads.some((head) => tied.has(head.attributes['xml:id']))
        return `${heads.map(pitch).toSorted().join('+')}:${value(node)}${isTied ? '~' : ''}`
      }
      case 'rest':
        return `r:${value(node)}`
      case 'mRest':
        return 'R'
      case 'beam':
        return beams ? `[${words(node)}]` : words(node)
      case 'tuplet':
        return `${node.attributes.num}(${words(node)})`
      default:
        return ''
    }
  }
  const words = (node: Node): string => node.children.map(word).filter(Boolean).join(' ')
  return all(root, 'measure').map((measure) =>
    all(measure, 'staff').flatMap((staff) => all(staff, 'layer').map(words).filter(Boolean)),
  )
}

interface Node {
  readonly name: string
  readonly attributes: Readonly<Record<string, string | undefined>>
  readonly children: Node[]
}

const parse = (text: string): Node => {
  const root: Node = { name: '', attributes: {}, children: [] }
  const open = [root]
  const parser = new SaxesParser()
  parser.on('opentag', ({ name, attributes }) => {
    const node: Node = { name, attributes, children: [] }
    open.at(-1)?.children.push(node)
    open.push(node)
  })
  parser.on('closetag', () => void open.pop())
  parser.write(text).close()
  return root
}

const all = (node: Node, name: string): Node[] =>
  node.children.flatMap((child) => (child.name === name ? [child] : all(child, name)))

const value = ({ attributes: { dur, dots } }: Node): string =>
  `${dur}${'.'.repeat(Number(dots ?? 0))}`

const signs = new Map([
  ['s', '#'],
  ['ss', '##'],
  ['x', '##'],
  ['f', 'b'],
  ['ff', 'bb'],
])

const pitch = (node: Node): string => {
  const { attributes } = node
  const [accid] = all(node, 'accid')
  const sign =
    attributes.accid ??
    accid?.attributes.accid ??
    attributes['accid.ges'] ??
    accid?.attributes['accid.ges'] ??
    ''
  const octave = attributes['oct.ges'] ?? attributes.oct
  return `${attributes.pname?.toUpperCase()}${signs.get(sign) ?? ''}${octave}`
}
