import { readFileSync, writeFileSync } from 'node:fs'
import { cpus } from 'node:os'

const page = new URL('./README.md', import.meta.url)

/**
 * With `--record` on the command line: writes the section of this script in `tests/bench/README.md`
 * anew, with the date and the kind of machine. Figures of two machines are compared by their ratios
 * and budgets, not by milliseconds.
 */
export const record = (script: string, lines: readonly string[]): void => {
  if (!process.argv.includes('--record')) return
  const day = new Date().toISOString().slice(0, 10)
  const head = `## ${script}`
  const machine = `${day}, ${cpus().length} cores, Node ${process.version}:`
  const section = [head, '', machine, '', '```text', ...lines, '```', ''].join('\n')
  const [first = '', ...sections] = readFileSync(page, 'utf8').split(/^(?=## )/m)
  const others = sections.filter((each) => !each.startsWith(`${head}\n`))
  const all = [...others, section].map((each) => each.trimEnd()).toSorted()
  writeFileSync(page, [first.trimEnd(), ...all].join('\n\n') + '\n')
}
