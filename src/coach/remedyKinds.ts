/** What can be done about a flaw that comes again and again; the exercises are in remedies.ts. */
export const remedyKinds = [
  /** A group of three around the place, slower. */
  'smallGroup',
  /** One hand alone. */
  'oneHand',
  /** The notes of each hand together, as chords. */
  'blocked',
  /** The two notes before and the two after, round and round. */
  'loop',
  /** The two onsets of the leap, and nothing else. */
  'leapAlone',
  /** Counted and tapped first, then played at half the tempo. */
  'tapFirst',
  /** Both hands, so slowly that each meeting can be heard. */
  'handsSlowly',
  /** Another fingering is looked for. */
  'fingering',
  /** The accidentals are named aloud before they are played. */
  'nameKeys',
] as const
export type RemedyKind = (typeof remedyKinds)[number]
