import { column, type Column } from './onsets'

/**
 * How much each thing that the splitting of hands looks at speaks for it (positive) or against it.
 *
 * The sum over a piece is the logarithm of how likely a sharing is, up to a constant. The figures were
 * fitted by gradient on piano music whose staves are known, so that the sharing of the staves becomes
 * as likely as can be; both hands have the same figures. Staves are not always the playing hands.
 *
 * Fitted on 32 pieces of the eighteenth to the twentieth century, some 47,000 notes, and short excerpts.
 * Each composer's pieces judged by a fit on the others': 93.5 % of the notes as the staves have them over
 * the 17 long pieces (84 % in the worst one).
 *
 * What they say: a note goes on in the hand whose note ends where it begins, above all within a fourth
 * and with the same length; a hand comes back to what it struck; it strikes a chord of even length as a
 * whole; it goes far from home or leaps only with a reason.
 */

/** The widest span, in semitones, that a hand is taken to strike: a major tenth. */
export const reach = 16
export const mostFingers = 5
/** Where there are more keys than two hands reach: for each semitone and each key too many. */
export const pastReach = -3
export const pastFinger = -8

/** A column by semitones: up to and with each step its weight, the last weight beyond. */
const bySemitones = (steps: readonly number[], weights: readonly number[]): Column =>
  column(widest).map((_, semitones) => {
    const step = steps.findIndex((most) => semitones <= most)
    return weights.at(step) ?? 0
  })

/** Two distances between keys together are less than this. */
const widest = 256

/** By span: to a third, a fifth, a sixth, an octave, a tenth, beyond. `uneven`: notes of unequal length. */
const spanSteps = [4, 7, 9, 12]
export const chordWeights = {
  /** One hand strikes several notes. */
  oneEven: bySemitones(spanSteps, [0.01, -0.03, 0.14, 0.06, -0.54]),
  oneUneven: bySemitones(spanSteps, [-0.11, -0.23, -0.28, -0.12, -0.73]),
  /** Both hands strike what one could reach. */
  sharedEven: bySemitones(spanSteps, [-0.18, 0.03, 0.3, 0.18, 0.1]),
  sharedUneven: bySemitones(spanSteps, [0.07, 0.06, 0.11, 0.17, 0.11]),
}

/** The hands part at the widest gap of the onset. */
export const widestGap = 0.13

/** A hand strikes nothing: while it holds a note, where its notes just end, or while it rests anyway. */
export const idleWeights = { holds: 0.16, breaksOff: -0.46, rests: -0.01 }

/** A note begins where one of the hand ends; by distance: same key, to a tone, a third, a fifth, an octave, beyond. */
const distanceSteps = [0, 2, 4, 7, 12]
export const linkWeights = {
  sameLength: bySemitones(distanceSteps, [0.33, 0.29, 0.11, 0.05, 0.07, 0.1]),
  otherLength: bySemitones(distanceSteps, [0.09, 0.23, -0.14, -0.22, -0.24, -0.28]),
  none: -0.27,
}

/** By how far the outer notes lie from those of a like grip not long ago, both together: 0, 2, 5, 9, 16, beyond, no such grip. */
export const likenessWeights = {
  moved: bySemitones([0, 2, 5, 9, 16], [0.37, 0.32, 0.16, 0.04, -0.02, -0.3]),
  none: -0.29,
}

/** For each semitone that a hand spans beyond a fifth. */
export const stretchPerSemitone = -0.048

/** For each octave that a hand strikes away from its home, and more beyond a fifth. */
export const centreWeights = { away: -0.32, farAway: -0.4 }

/** A hand leaps, for each octave: beyond a fifth, for each quarter's speed; beyond an octave at any speed. */
export const leapWeights = { quick: -0.34, wide: -0.23 }

/** What other onsets of the same kind do in the piece; and other octaves that are all of their onset. */
export const habitWeights = { figure: 0.11, octave: 0.4 }
