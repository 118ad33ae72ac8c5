import type { VerovioToolkit } from 'verovio/esm'
import { writeMei, type Mei } from './mei'
import { dressSvg } from './dress'
import { drawOpenTies } from './openTies'
import type { Stretch } from './stretch'
import type { SystemPlaces } from './systemPlaces'

/** What a drawing must fit into, in CSS pixels. */
export interface Box {
  readonly width: number
  readonly height: number
}

export interface Drawing extends Box {
  readonly svg: string
  /** Of a line of the whole piece: its picture is in few elements, which name nothing. */
  readonly places?: SystemPlaces
  /** Of a line with marks: their strokes, an SVG group to be put into the picture. */
  readonly pencil?: string
  /** How far down all ends that is printed of such a line, as a share of the height. */
  readonly lowest?: number
}

/** At scale 100 one staff space is this many pixels (the engraver's own unit of 9, twice). */
export const spaceAtFullScale = 18
/**
 * Staff spaces in pixels. Printed piano music has a staff space of 1.75 mm and is read at 60 cm; at
 * 1.5 m the same angle needs 4.4 mm, 17 px of 96 to the inch. Below 7 px heads run together.
 */
const space = { least: 7, comfortable: 11, severalMost: 17, most: 26 } as const
/** More systems than this scroll, at a comfortable size. */
const mostSystems = 12
/** So many onsets stand in one system, however small. */
const oneSystem = 10
/** A short chunk is not pulled wider than this against its natural spacing. */
const widest = 2.4

/** Engraves a stretch as large as its box allows; longer stretches break into systems. */
export const draw = (toolkit: VerovioToolkit, stretch: Stretch, box: Box): Drawing => {
  const mei = writeMei(stretch)
  const natural = measure(toolkit, mei, options(stretch.hands.length > 1))
  const single = scaleOfOne(natural, box)
  const { systems, scale, fits } = bestSystems(natural, box)
  return mei.onsets <= oneSystem || systems === 1
    ? drawOne(toolkit, mei, natural, box, single)
    : drawMany(toolkit, mei, box, scale, fits)
}

export const options = (isGrand: boolean): Readonly<Record<string, unknown>> => ({
  inputFrom: 'mei',
  header: 'none',
  footer: 'none',
  svgViewBox: true,
  svgFormatRaw: true,
  svgRemoveXlink: true,
  xmlIdSeed: 1,
  adjustPageHeight: true,
  mnumInterval: 1,
  scale: 100,
  // Room for the pencil: heads above and below, the row of ticks.
  pageMarginTop: 38,
  pageMarginBottom: 62,
  pageMarginLeft: 12,
  pageMarginRight: 12,
  spacingStaff: isGrand ? 15 : 12,
  spacingSystem: 14,
  spacingLinear: 0.3,
  spacingNonLinear: 0.55,
  leftMarginAccid: 1,
  // 8va rather than 8.
  octaveAlternativeSymbols: true,
})

/** All in one line at scale 100, as narrow as its spacing allows. */
export const measure = (
  toolkit: VerovioToolkit,
  mei: Mei,
  layout: Readonly<Record<string, unknown>>,
): Box => {
  toolkit.setOptions({
    ...layout,
    breaks: 'none',
    adjustPageWidth: true,
    pageWidth: 100_000,
  })
  load(toolkit, mei)
  return sizeOf(toolkit.renderToSVG(1))
}

export const load = (toolkit: VerovioToolkit, { mei }: Mei): void => {
  if (toolkit.loadData(mei) !== 1)
    throw new Error(`the engraver refused the notation: ${toolkit.getLog()}`)
}

const scaleOfOne = (natural: Box, box: Box): number =>
  Math.min(space.most / spaceAtFullScale, box.width / natural.width, box.height / natural.height)

const drawOne = (
  toolkit: VerovioToolkit,
  mei: Mei,
  natural: Box,
  box: Box,
  scale: number,
): Drawing => {
  const pageWidth = Math.floor(Math.min(box.width / scale, natural.width * widest))
  toolkit.setOptions({
    breaks: 'encoded',
    adjustPageWidth: false,
    pageWidth,
    minLastJustification: 0,
  })
  toolkit.redoLayout()
  return finish(toolkit, mei, scale)
}

/** Breaks into systems; a little smaller when they miss the height that they should fit. */
const drawMany = (
  toolkit: VerovioToolkit,
  mei: Mei,
  box: Box,
  first: number,
  shouldFit: boolean,
): Drawing => {
  let scale = first
  for (let attempt = 0; ; attempt++) {
    toolkit.setOptions({
      breaks: 'auto',
      adjustPageWidth: false,
      pageWidth: Math.max(100, Math.floor(box.width / scale)),
      pageHeight: 60_000,
      minLastJustification: 0.6,
    })
    // A layout that was made without breaks cannot be broken anew: read again.
    load(toolkit, mei)
    const drawing = finish(toolkit, mei, scale)
    if (!shouldFit || drawing.height <= box.height || attempt >= 3) return drawing
    scale = Math.max(space.least / spaceAtFullScale, scale * 0.92)
  }
}

interface Systems {
  readonly systems: number
  readonly scale: number
  /** False when the music is too long for the box: it goes on downward, at a comfortable size. */
  readonly fits: boolean
}

/** How many systems let the music be largest, and the scale then. Breaks at bar lines waste a tenth. */
const bestSystems = (natural: Box, box: Box): Systems => {
  let best = { systems: 1, scale: scaleOfOne(natural, box) }
  for (let systems = 2; systems <= mostSystems; systems++) {
    const byWidth = (systems * box.width) / (natural.width * 1.1)
    const scale = Math.min(box.height / (systems * natural.height), byWidth)
    if (scale > best.scale * 1.05) best = { systems, scale }
  }
  const fitting = Math.min(best.scale * spaceAtFullScale, space.severalMost)
  if (fitting >= space.least) return { ...best, scale: fitting / spaceAtFullScale, fits: true }
  return { systems: mostSystems, scale: space.comfortable / spaceAtFullScale, fits: false }
}

export const finish = (toolkit: VerovioToolkit, mei: Mei, scale: number): Drawing => {
  const svg = drawOpenTies(toolkit.renderToSVG(1), mei.openTies)
  const natural = sizeOf(svg)
  const size = {
    width: Math.round(natural.width * scale),
    height: Math.round(natural.height * scale),
  }
  return { svg: dressSvg(svg, size, mei.notes), ...size }
}

const sizeOf = (svg: string): Box => {
  const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? []
  if (width === undefined || height === undefined) throw new Error('the engraver drew nothing')
  return { width: Number(width), height: Number(height) }
}
