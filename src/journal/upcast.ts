/** From the shape of one version to that of the next; `undefined` when there is no way. */
export type Upcaster = (
  event: Readonly<Record<string, unknown>>,
) => Readonly<Record<string, unknown>>

/** Version 1 knew no forms: everything was played as written. */
const nameForm: Upcaster = (event) =>
  event['kind'] === 'drillBegun' ? { ...event, form: 'asWritten' } : event

/** Version 3 only adds kinds: what the person wrote and decided. */
const asItIs: Upcaster = (event) => event

/** Upcasters by the version that they start from. */
export const upcasters: ReadonlyMap<number, Upcaster> = new Map([
  [1, nameForm],
  [2, asItIs],
])

/** The whole positive number in `v`; `undefined` when it is not an event at all. */
export const versionOf = (raw: unknown): number | undefined => {
  if (!isRecord(raw)) return undefined
  const { v } = raw
  return typeof v === 'number' && Number.isInteger(v) ? v : undefined
}

/** Lifts an event version by version up to `to`; `undefined` when a step between is missing. */
export const upcast = (
  raw: unknown,
  from: number,
  to: number,
  steps: ReadonlyMap<number, Upcaster>,
): unknown => {
  let event = raw
  for (let version = from; version < to; version++) {
    const step = steps.get(version)
    if (!step || !isRecord(event)) return undefined
    event = { ...step(event), v: version + 1 }
  }
  return event
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null
