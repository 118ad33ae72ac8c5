/**
 * The command line: the same core on files, for scripts, tests and recorded takes.
 *
 * `npm run -s cli -- VERB --option value ...` prints for people, with --json one JSON object.
 * `--jobs FILE` reads one JSON object a line (the options by name, and an `id`) and prints one JSON
 * line for each with that id, or { id, error }. Exit 0; 2 with one line on standard error.
 *
 * Example: `npm run -s cli -- judge --piece sample-midi/morning-at-the-mill.mid --take
 * sample-midi/takes/run-clean.mid --hand right --from 9 --to 9` -> 1 clean.
 */
import { failed, ok, type Result } from '@/music/result'
import { exercises } from './exercises'
import { loadText } from './files'
import { finger } from './finger'
import { judge } from './judge'
import { parseCommand, parseJob, type Command } from './options'
import { plan } from './plan'
import { read } from './read'
import { review } from './review'
import { spots } from './spots'
import type { Answer, Verb } from './verb'

const verbs: Readonly<Record<string, Verb>> = {
  read,
  judge,
  exercises,
  finger,
  spots,
  review,
  plan,
}

const usage = `Usage: npm run -s cli -- VERB OPTIONS
  read   --piece FILE
         (beats: quarter notes from the downbeat of the first full bar, an upbeat's are negative)
  judge  --piece FILE --take FILE [--hand left|right|both] [--from BAR --to BAR]
         [--tempo N] [--standard notes|flow|time]
  judge  --piece FILE --journal FILE
  review --journal FILE [--zone NAME] [--as figures|table] [--import FILE]
  exercises  --piece FILE [--from BAR --to BAR] [--hand left|right|both]
         [--thoroughness thorough|brisk] [--direction forward|fromTheEnd]
         [--span SEMITONES] [--tempo N]
  spots  --piece FILE [--tempo N] [--span small|medium|large]
  finger  --piece FILE --hand left|right [--from BAR --to BAR] [--span small|medium|large]
  plan   --journal FILE --minutes N --day YYYY-MM-DD [--piece FILE,FILE] [--days N]
         [--span small|medium|large] [--seed N] [--zone NAME]
         (the first piece is the main one; --days: of practice a week)
With --json: one JSON object. With --jobs FILE: one job, a JSON object, a line.
`

const run = (words: readonly string[]): Result<void, string> => {
  if (words[0] === '--help') return ok(print(usage))
  const command = parseCommand(words)
  if (!command.ok) return command
  const verb = Object.hasOwn(verbs, command.value.verb) ? verbs[command.value.verb] : undefined
  if (!verb)
    return failed(
      `There is no verb “${command.value.verb}”; there are ${Object.keys(verbs).join(', ')}, and --help tells more.`,
    )
  return command.value.jobs === undefined
    ? runOne(verb, command.value)
    : runJobs(verb, command.value.jobs)
}

const runOne = (verb: Verb, { options, json }: Command): Result<void, string> => {
  const answer = verb(options)
  if (!answer.ok) return answer
  return ok(print(`${json ? JSON.stringify(answer.value.json) : answer.value.text()}\n`))
}

/** Every job is answered, whatever became of the others. */
const runJobs = (verb: Verb, path: string): Result<void, string> => {
  const text = loadText(path)
  if (!text.ok) return text
  for (const line of text.value.split('\n')) {
    if (line.trim() === '') continue
    const { id, options } = parseJob(line)
    const answer = options.ok ? attempt(() => verb(options.value)) : options
    print(
      `${JSON.stringify(answer.ok ? { id, ...answer.value.json } : { id, error: answer.reason })}\n`,
    )
  }
  return ok(undefined)
}

/** A fault of ours in one job is told as its error. */
const attempt = (work: () => Result<Answer, string>): Result<Answer, string> => {
  try {
    return work()
  } catch (error) {
    return failed(
      `A fault in the program: ${error instanceof Error ? error.message : String(error)}`,
    )
  }
}

const print = (text: string): void => {
  process.stdout.write(text)
}

const outcome = run(process.argv.slice(2))
if (!outcome.ok) {
  process.stderr.write(`${outcome.reason}\n`)
  process.exitCode = 2
}
