/** An element of an XML file with all that is in it. */
export interface XmlElement {
  readonly name: string
  readonly attributes: Readonly<Record<string, string>>
  readonly children: readonly XmlElement[]
  /** The text of the element itself, without that of its children. */
  readonly text: string
}

/** The first child of that name. */
export const childOf = (element: XmlElement, name: string): XmlElement | undefined =>
  element.children.find((child) => child.name === name)

export const childrenOf = (element: XmlElement, name: string): readonly XmlElement[] =>
  element.children.filter((child) => child.name === name)

/** Whether a child of that name is there: many elements say something by being there. */
export const hasChild = (element: XmlElement, name: string): boolean =>
  childOf(element, name) !== undefined

/** The text of the first child of that name, on one line; '' where there is none. */
export const textIn = (element: XmlElement, name: string): string =>
  oneLine(childOf(element, name)?.text ?? '')

/** The number in the first child of that name; `undefined` where there is none or it is no decimal number. */
export const numberIn = (element: XmlElement, name: string): number | undefined => {
  const child = childOf(element, name)
  return child && parseDecimal(child.text)
}

/** 'xs:decimal' of XML Schema, at most as long as a person would write it. */
export const parseDecimal = (text: string | undefined): number | undefined => {
  const trimmed = text?.trim() ?? ''
  return trimmed.length <= 24 && /^[+-]?(\d+(\.\d*)?|\.\d+)$/.test(trimmed)
    ? Number(trimmed)
    : undefined
}

export const oneLine = (text: string): string => text.replace(/\s+/g, ' ').trim()
