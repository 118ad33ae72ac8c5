import { strokesOf } from './marks'
import { readPage, type Page } from './page'
import type { PencilMark } from './pencilMark'

export type { PencilMark } from './pencilMark'

export interface Pencil {
  /** Draws the mark in its slot, in place of what stood there; painted with the next frame. */
  readonly put: (slot: string, mark: PencilMark) => void
  readonly erase: (slot: string) => void
  readonly clear: () => void
}

/**
 * Opens a pencil on an engraving that stands on the page. Its geometry is read once, from the text of
 * the drawing; after that marks cost no layout. Marks on notes that the drawing lacks are left out.
 *
 * Colours: `--pencil-right`, `--pencil-flaw`, `--pencil-forgiven` of the page; without them blue and vermilion after
 * Okabe & Ito 2008, "Color Universal Design", the latter darkened to 5:1 on white paper.
 */
export const openPencil = (svg: SVGSVGElement): Pencil => {
  svg.querySelector('g.pencil')?.remove()
  const page = readPage(svg.outerHTML)
  const layer = element('g')
  layer.setAttribute('class', 'pencil')
  const ground = svg.querySelector('g.page-margin') ?? svg
  ground.append(layer)
  const drawn = new Map<string, SVGElement>()
  const waiting = new Map<string, PencilMark | undefined>()
  let frame = 0

  const flush = (): void => {
    frame = 0
    for (const [slot, mark] of waiting) {
      drawn.get(slot)?.remove()
      drawn.delete(slot)
      if (!mark) continue
      const group = drawMark(mark, page)
      layer.append(group)
      drawn.set(slot, group)
    }
    waiting.clear()
  }
  const write = (slot: string, mark: PencilMark | undefined): void => {
    waiting.set(slot, mark)
    if (frame === 0) frame = requestAnimationFrame(flush)
  }
  return {
    put: write,
    erase: (slot) => write(slot, undefined),
    clear: () => {
      for (const slot of [...drawn.keys(), ...waiting.keys()]) write(slot, undefined)
    },
  }
}

const element = <Name extends 'g' | 'path'>(name: Name): SVGElementTagNameMap[Name] =>
  document.createElementNS('http://www.w3.org/2000/svg', name)

const drawMark = (mark: PencilMark, page: Page): SVGElement => {
  const group = element('g')
  const ink = mark.forgiven ? 'forgiven' : mark.shape === 'right' ? 'right' : 'flaw'
  group.setAttribute('class', `pencil-${ink}`)
  group.setAttribute('data-shape', mark.shape)
  group.style.stroke = inks[ink]
  group.setAttribute('stroke-linecap', 'round')
  group.setAttribute('stroke-linejoin', 'round')
  group.setAttribute('fill', 'none')
  const space = page.staves[0]?.space ?? 1
  const thin = mark.forgiven ? 0.6 : 1
  for (const { path, width, dotted } of strokesOf(mark, page)) {
    const line = element('path')
    line.setAttribute('d', path)
    line.setAttribute('stroke-width', `${Math.round(width * thin * space)}`)
    if (dotted) line.setAttribute('stroke-dasharray', `0 ${Math.round(0.46 * space)}`)
    group.append(line)
  }
  return group
}

const inks = {
  right: 'var(--pencil-right, #0072b2)',
  flaw: 'var(--pencil-flaw, #b04a00)',
  forgiven: 'var(--pencil-forgiven, var(--pencil-flaw, #b04a00))',
} as const
