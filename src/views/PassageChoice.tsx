import { beatBounds, formatBeats, parseBeats } from '@/music/beat'
import { handChoices, type HandChoice, type Score, type TimeSignature } from '@/music/music'
import type { Tempo } from '@/music/units'
import { musicText } from '@/text/music'
import { pieceText } from '@/text/piece'
import type { Passage } from './passageKeys'
import { beatWord, handWords } from './words'

/** Bars, hand and goal tempo, by their names and figures. */
export const PassageChoice = ({
  score,
  passage,
  hand,
  goal,
  time,
  onPassage,
  onHand,
  onGoal,
}: {
  readonly score: Score
  readonly passage: Passage
  readonly hand: HandChoice
  readonly goal: Tempo
  readonly time: TimeSignature
  readonly onPassage: (passage: Passage) => void
  readonly onHand: (hand: HandChoice) => void
  readonly onGoal: (goal: Tempo) => void
}) => {
  const choose = (from: number, to: number): void =>
    onPassage({ from: Math.min(from, to), to: Math.max(from, to) })
  return (
    <form className="row choose" onSubmit={(event) => event.preventDefault()}>
      <BarChoice
        label={pieceText.choice.fromBar}
        score={score}
        value={passage.from}
        onChange={(from) => onPassage({ from, to: Math.max(from, passage.to) })}
      />
      <BarChoice
        label={pieceText.choice.toBar}
        score={score}
        value={passage.to}
        onChange={(to) => choose(passage.from, to)}
      />
      <fieldset className="row">
        <legend className="unseen">{pieceText.choice.hand}</legend>
        {handChoices.map((choice) => (
          <label key={choice} className="row tight">
            <input
              type="radio"
              name="hand"
              checked={hand === choice}
              onChange={() => onHand(choice)}
            />
            {handWords[choice]}
          </label>
        ))}
      </fieldset>
      <label className="row tight">
        {pieceText.choice.goalTempo}
        <input
          type="number"
          min={beatBounds.slowest}
          max={beatBounds.fastest}
          defaultValue={formatBeats(goal, time)}
          onChange={(event) => {
            const quarters = parseBeats(event.target.value, time)
            if (quarters !== undefined) onGoal(quarters)
          }}
        />
        <span className="soft">{musicText.aMinute(beatWord(time))}</span>
      </label>
    </form>
  )
}

const BarChoice = ({
  label,
  score,
  value,
  onChange,
}: {
  readonly label: string
  readonly score: Score
  readonly value: number
  readonly onChange: (index: number) => void
}) => (
  <label className="row tight">
    {label}
    <select value={value} onChange={(event) => onChange(Number(event.target.value))}>
      {score.bars.map((bar, i) => (
        <option key={bar.start} value={i}>
          {bar.number}
        </option>
      ))}
    </select>
  </label>
)
