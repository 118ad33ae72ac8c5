/** Note values by their MusicXML names (note-type-value), in quarters. */
const names =
  'maxima long breve whole half quarter eighth 16th 32nd 64th 128th 256th 512th 1024th'.split(' ')
const values = new Map(names.map((name, i) => [name, 32 / 2 ** i]))

/** ('quarter', 1) -> 1.5, a dotted quarter; `undefined` when there is no such value. */
export const noteValue = (name: string, dots: number): number | undefined => {
  const value = values.get(name)
  return value === undefined ? undefined : value * (2 - 0.5 ** Math.min(dots, 8))
}
