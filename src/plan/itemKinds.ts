/** What an item of a day is, in the order of playing. */
export const itemKinds = [
  'warmUp',
  'coldCheck',
  'problemSpot',
  'newGroup',
  'join',
  'runThrough',
] as const
export type ItemKind = (typeof itemKinds)[number]
