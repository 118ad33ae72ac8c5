/** What was stored by an earlier program, read with care. */
export const fieldsOf = (stored: unknown): Readonly<Record<string, unknown>> =>
  typeof stored === 'object' && stored !== null ? Object.fromEntries(Object.entries(stored)) : {}

export const isAmount = (value: unknown): value is number =>
  typeof value === 'number' && Number.isFinite(value) && value >= 0

export const isCount = (value: unknown): value is number =>
  isAmount(value) && Number.isInteger(value)
