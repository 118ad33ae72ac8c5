import './passageStrip.css'

/** From the first onset to the last, in ticks. */
interface Stretch {
  readonly from: number
  readonly to: number
}

/** A passage as a thin line, and on it the part that is practised. */
export const PassageStrip = ({
  passage,
  part,
}: {
  readonly passage: Stretch
  readonly part: Stretch
}) => {
  const length = Math.max(1, passage.to - passage.from)
  const begin = (100 * (part.from - passage.from)) / length
  const end = (100 * (part.to - passage.from)) / length
  return (
    <svg
      className="passage-strip"
      viewBox="0 0 100 6"
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      <path className="passage-whole" d="M0 3h100" />
      <path className="passage-part" d={`M${begin} 3H${Math.max(end, begin + 1)}`} />
    </svg>
  )
}
