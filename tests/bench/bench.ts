/** `npm run bench`: every benchmark on fixed inputs; exit code 1 when one exceeds its budget. */
import { benchDifficulty } from './difficulty'
import { benchFingering } from './fingering'
import { benchJournal } from './journal'
import { benchJudge } from './judge'
import { benchScore } from './score'
import { benchStudio } from './studio'

const measures = [
  ...(await benchJudge()),
  ...benchScore(),
  ...benchFingering(),
  ...benchDifficulty(),
  ...benchJournal(),
  ...(await benchStudio()),
]

const figure = (value: number): string =>
  value.toLocaleString('en', { maximumSignificantDigits: 3, useGrouping: false })

let exceeded = 0
for (const { name, value, unit, budget } of measures) {
  const over = budget !== undefined && !(value <= budget)
  if (over) exceeded++
  const limit =
    budget === undefined ? '' : `  (budget ${figure(budget)}${over ? ', EXCEEDED' : ''})`
  console.log(`${name.padEnd(44)} ${figure(value).padStart(8)} ${unit}${limit}`)
}
process.exitCode = exceeded > 0 ? 1 : 0
