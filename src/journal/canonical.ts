/** The same text for the same content, in whatever order its fields stand. */
export const canonical = (content: unknown): string =>
  JSON.stringify(content, (_, value: unknown) =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).toSorted(([a], [b]) => (a < b ? -1 : 1)))
      : value,
  )
