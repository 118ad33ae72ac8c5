/** One or more. */
export type Some<T> = readonly [T, ...T[]]

/** What has the same name together, in the order in which it came. */
export const groupBy = <K, T>(
  items: readonly T[],
  nameOf: (item: T) => K,
): ReadonlyMap<K, Some<T>> => {
  const groups = new Map<K, [T, ...T[]]>()
  for (const item of items) {
    const name = nameOf(item)
    const group = groups.get(name)
    if (group) group.push(item)
    else groups.set(name, [item])
  }
  return groups
}
