import {
  dotGap,
  pressed,
  weights,
  type PencilMark,
  type WeighedMark,
  type Weight,
} from '@/engraving/pencilMark'
import { sampleOfMark } from '@/engraving/markSample'
import { flawsText } from '@/text/flaws'
import { flawWords } from './words'
import type { Weighing } from './weighedFlaws'

type Shape = Exclude<PencilMark['shape'], 'right'>

/** What the marks on the music mean: each shape, and how hard the pencil was pressed. */
export const FlawLegend = ({
  marks,
  weighing,
}: {
  readonly marks: readonly WeighedMark[]
  readonly weighing: Weighing
}) => {
  const drawn = new Set(marks.flatMap(({ mark: { shape } }) => (shape === 'right' ? [] : [shape])))
  // In the order in which they are told elsewhere: those at a head first, what stands under the line last.
  const order = Object.keys(flawWords)
  const shapes = [...drawn].toSorted((a, b) => order.indexOf(a) - order.indexOf(b))
  const shown = weights.filter((weight) => marks.some((mark) => mark.weight === weight))
  return (
    <div className="legend">
      <ul aria-label={flawsText.legend.marks}>
        {shapes.map((shape) => (
          <li key={shape}>
            <Sample shape={shape} weight="middle" /> {shapeWords(shape)}
          </li>
        ))}
      </ul>
      <ul aria-label={flawsText.legend.weights}>
        {shown.map((weight) => (
          <li key={weight}>
            <Sample shape={shapes[0] ?? 'missing'} weight={weight} />{' '}
            {weightWords(weight, weighing)}
          </li>
        ))}
      </ul>
    </div>
  )
}

const shapeWords = (shape: Shape): string => {
  if (shape === 'wrong') return flawsText.legend.another
  return shape === 'drift' ? flawsText.legend.drift : flawWords[shape]
}

const weightWords = (weight: Weight, { middle, heavy }: Weighing): string => {
  switch (weight) {
    case 'light':
      return flawsText.legend.upTo(middle - 1)
    case 'middle':
      return flawsText.legend.between(middle, heavy - 1)
    case 'heavy':
      return flawsText.legend.atLeast(heavy)
  }
}

const Sample = ({ shape, weight }: { readonly shape: Shape; readonly weight: Weight }) => {
  const { viewBox, lines, heads, strokes, space } = sampleOfMark(shape)
  return (
    <svg className="mark-sample" viewBox={viewBox} aria-hidden="true">
      {lines.map((y) => (
        <path key={y} className="staff-line" d={`M0 ${y}H90`} />
      ))}
      {heads.map(({ x, y }) => (
        <ellipse key={x} cx={x} cy={y} rx="6.4" ry="4.6" transform={`rotate(-20 ${x} ${y})`} />
      ))}
      <g className="pencil-flaw" fill="none" strokeLinecap="round" strokeLinejoin="round">
        {strokes.map(({ path, width, dotted }, i) => {
          const thick = width * pressed[weight]
          return (
            <path
              key={i}
              d={path}
              strokeWidth={thick * space}
              {...(dotted ? { strokeDasharray: `0 ${dotGap(thick) * space}` } : {})}
            />
          )
        })}
      </g>
    </svg>
  )
}
