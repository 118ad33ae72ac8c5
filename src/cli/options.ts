import { failed, ok, type Result } from '@/music/result'

/** Options by name, as given: words on the command line, words or numbers in a job. */
export type Options = ReadonlyMap<string, string | number>

export interface Command {
  readonly verb: string
  readonly options: Options
  readonly json: boolean
  /** A file with one job a line. */
  readonly jobs?: string
}

/** ['judge', '--piece', 'a.mid', '--json'] -> verb 'judge', options { piece: 'a.mid' }, json. */
export const parseCommand = (words: readonly string[]): Result<Command, string> => {
  const [verb = '', ...rest] = words
  const options = new Map<string, string>()
  let json = false
  for (let i = 0; i < rest.length; i++) {
    const name = /^--([a-z]+)$/.exec(rest[i] ?? '')?.[1]
    if (name === undefined) return failed(`“${rest[i]}” is no option: options begin with --.`)
    if (name === 'json') {
      json = true
      continue
    }
    const value = rest[++i]
    if (value === undefined) return failed(`--${name} needs a value after it.`)
    options.set(name, value)
  }
  const jobs = options.get('jobs')
  options.delete('jobs')
  return ok({ verb, options, json, ...(jobs === undefined ? {} : { jobs }) })
}

/** The options of a job: an object of words and numbers by name; its `id` apart. */
export const parseJob = (
  line: string,
): { readonly id: unknown; readonly options: Result<Options, string> } => {
  const job = parseObject(line)
  if (!job) return { id: null, options: failed('The line is no JSON object.') }
  const { id = null, ...rest } = job
  const options = new Map<string, string | number>()
  for (const [name, value] of Object.entries(rest)) {
    if (typeof value !== 'string' && typeof value !== 'number')
      return { id, options: failed(`“${name}” must be a word or a number.`) }
    options.set(name, value)
  }
  return { id, options: ok(options) }
}

const parseObject = (line: string): Record<string, unknown> | undefined => {
  try {
    const value: unknown = JSON.parse(line)
    return typeof value === 'object' && value !== null && !Array.isArray(value)
      ? { ...value }
      : undefined
  } catch {
    return undefined
  }
}

/** The first option that the verb does not know, in words. */
export const checkNames = (options: Options, known: readonly string[]): Result<Options, string> => {
  const strange = [...options.keys()].find((name) => !known.includes(name))
  return strange === undefined
    ? ok(options)
    : failed(`There is no option --${strange}; there are ${known.map((n) => `--${n}`).join(', ')}.`)
}

export const wordOf = (options: Options, name: string): Result<string, string> => {
  const value = options.get(name)
  return value === undefined || value === '' ? failed(`--${name} is missing.`) : ok(String(value))
}

/** One of some words; the first of them when none is given. */
export const choiceOf = <T extends string>(
  options: Options,
  name: string,
  choices: readonly [T, ...T[]],
): Result<T, string> => {
  const value = options.get(name)
  const choice = value === undefined ? choices[0] : choices.find((c) => c === value)
  return choice === undefined
    ? failed(`--${name} must be one of ${choices.join(', ')}, not “${value}”.`)
    : ok(choice)
}

/** A number within bounds; `undefined` when none is given. */
export const numberOf = (
  options: Options,
  name: string,
  { from, to, whole = false }: NumberBounds,
): Result<number | undefined, string> => {
  const value = options.get(name)
  if (value === undefined) return ok(undefined)
  const n = value === '' ? NaN : Number(value)
  return n >= from && n <= to && (!whole || Number.isInteger(n))
    ? ok(n)
    : failed(
        `--${name} must be a ${whole ? 'whole ' : ''}number from ${from} to ${to}, not “${value}”.`,
      )
}

export interface NumberBounds {
  readonly from: number
  readonly to: number
  readonly whole?: boolean
}
