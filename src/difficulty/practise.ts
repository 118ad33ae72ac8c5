import type { Feature } from './load'

/** A way to practise each kind of difficulty: common practice, no source. */
const ways: Readonly<Record<Feature, string>> = {
  speed: 'groups of three and four at half the tempo, in long-short and short-long rhythms',
  leap: 'the leap alone: land on the keys without striking, then strike; look ahead to the next place',
  stretch: 'roll the chord slowly and stop when the hand tires; leave out a note if it strains',
  chords:
    'each voice alone, then two by two; prepare the fingers over the keys before they go down',
  repeats:
    'slowly with a loose wrist, accents on every second and third note; try a change of fingers',
  trill: 'measured and slow, four notes to a beat, then eight; begin and end on the written note',
  topography:
    'move the hand in between the black keys and out again, slowly, without turning the wrist',
  fingering: 'decide the fingers and write them in; groups of three around the awkward place',
  thumb: 'the passing alone: two notes before and two after, the thumb prepared early',
  accidentals: 'name the notes, blocked as chords where the hand allows it',
  crossing: 'hands separately, then together without sound: which hand is above, and who gives way',
  rhythm: 'tap both hands on the lid, counting the common division; then one beat as a loop',
}

/** For each cause a way, in the same order. */
export const waysToPractise = (causes: readonly Feature[]): readonly string[] =>
  causes.map((cause) => ways[cause])
