/** `npm run bench`: every benchmark on fixed inputs; exit code 1 when one exceeds its budget. */
import { benchDifficulty } from './difficulty'
import { benchFingering } from './fingering'
import { benchJournal } from './journal'
import { benchJudge } from './judge'
import type { Measure } from './measure'
import { benchScore } from './score'
import { record } from './record'
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

const isOver = ({ value, budget }: Measure): boolean => budget !== undefined && !(value <= budget)
const lines = measures.map((measure) => {
  const { name, value, unit, budget } = measure
  const limit =
    budget === undefined ? '' : `  (budget ${figure(budget)}${isOver(measure) ? ', EXCEEDED' : ''})`
  return `${name.padEnd(44)} ${figure(value).padStart(8)} ${unit}${limit}`
})
for (const line of lines) console.log(line)
record('npm run bench', lines)
process.exitCode = measures.some(isOver) ? 1 : 0
