/**
 * Every number by which the judge decides, with its reason. Costs are in tenths of a flaw: one plain
 * slip costs 10; what merely looks odd costs less and only decides between readings with equal slips.
 */
import { ms } from '@/music/units'

// --- what a reading costs -------------------------------------------------------------------

/** One wrong, missing, extra or repeated note. The unit of all other costs. */
export const slipCost = 10
/** Lacking notes of one onset come together (a chord missed, a finger not down), so each further one costs less. */
export const furtherLackCost = 6
/** Two onsets exchanged: one slip. */
export const orderCost = 10
/** Going back inside the chunk: one slip, and a little more, so that a plain repeated key stays one. */
export const restartCost = 11
/** Going back takes a moment; without one it is less likely. */
export const hurriedReturnCost = 2
/** Ahead by any distance: no leap costs more, so that the judge finds the player again. */
export const leapCost = 34
/** A key that would skip an onset comes when that onset was due: rather a wrong key in its place. */
export const inPlaceCost = 5
/** So much odder than the next onset in time: the gap is under six tenths of the one to the onset leapt to. */
export const tooSoonOdd = 0.6
/** The same key again: a little cheaper than a foreign key, since fingers do this more often. */
export const echoCost = 9
/** Further keys of a chord that is struck again belong to the same slip. */
export const furtherEchoCost = 0.3
/** Breaking off in the middle: dearer than one slip, cheaper than two. */
export const breakOffCost = 12
/** Breaking off at a wrong key: that is when people go back. */
export const breakOffAtSlipCost = 6
/** Only the first onset was tried: little is broken off. */
export const noTryCost = 9
/**
 * A key that begins nothing; one that would fit the beginning, or nearly, is less likely to be none of
 * it, and one near what was to come next hardly left the repetition.
 */
export const strayCost = { far: 8, near: 11, fits: 12, next: 15 } as const
/** Beginning again at once costs nearly an extra note, less the longer the pause, nothing after the settling time. */
export const quickStartCost = 9
/** After a pause of this many gaps the first key of the chunk is a new beginning rather than a slip. */
export const freshGap = 1.5
export const freshStartGain = 4
/** A key that belongs to no repetition, while the last one is still settling. */
export const hastyStrayCost = 5
/** The first key of the next repetition looks like the last one struck again, and too soon. */
export const echoStartCost = 10
/** A foreign key far from every written one (more than a whole tone, no octave) was hardly meant for it. */
export const farKeyCost = 1.5
export const farStartCost = 3
/** What odd timing may cost at most: less than half a slip, it never makes or unmakes one. */
export const oddTimeCost = 4

/** Readings dearer than the best by this much are given up: three slips in a row are looked through. */
export const keepWithin = 34
/** And no more than this many are kept; half as many judge the measured takes just the same. */
export const keepAtMost = 12
/** A cut between repetitions stands when every reading without it is dearer by this: half a slip and a bit. */
export const cutLead = 6
/** No key is shown as false while a reading at most one slip dearer than the best takes it for right. */
export const benefitOfDoubt = 10

// --- time in the alignment ------------------------------------------------------------------

/** Notes of an onset may come after the next onset has begun, this many onsets back: runs against a slow hand. */
export const openOnsets = 4
/**
 * An onset none of whose notes came before the next onset was complete is exchanged with it when it
 * comes later than this part of the written gap. Professionals' hands stay under half a gap apart.
 */
export const exchangedGap = 0.5
/** The order of two onsets is certain above 60 ms and guessed at 22 (mazurka.org.uk/experiments). */
export const exchangedLeast = ms(30)
export const exchangedMost = ms(80)
/** Before any tempo is known. */
export const exchangedUnknown = ms(80)
/** The next onset has begun but is not complete: the hands are apart, not the onsets exchanged. */
export const apartGap = 1
export const apartLeast = ms(60)
export const apartMost = ms(250)
export const apartUnknown = ms(130)
/** A straggling note of a chord that has begun in time: 99 of 100 chords of professionals spread less than 178 ms. */
export const stragglerLeast = ms(200)
export const stragglerGap = 1.3
/** Notes of one chord struck again are struck together: spread of a chord, 95th percentile 68 ms, with room. */
export const echoTogether = ms(130)
/** No finger repeats a key faster than about 13 times a second; sooner than this the key bounced, and no one erred. */
export const bounce = ms(40)
/** So that a strike that is written is not taken for a bounce. */
export const bounceCost = 0.5
/** The gap taken for granted before any tempo is known. */
export const unknownGap = ms(250)

// --- cutting --------------------------------------------------------------------------------

/** After the last onset is complete: longer than a stutter (up to 0.45 s), shorter than a pause (0.6 s up). */
export const settle = ms(550)
/** The last onset is struck, but not complete or not right: what lacks may still come. */
export const settleLacking = ms(1000)
/** Whether the last onset was struck wrong or is still to come is as good as undecided. */
export const doubtWait = ms(2500)
/** A key that begins nothing may turn out to be a wrong first note for this long. */
export const strayWait = ms(2500)
/** Silence breaks off: two bars or four seconds, whichever is longer. */
export const silenceBars = 2
export const silenceLeast = ms(4000)
/** Before any tempo is known: 50 quarters a minute, slow practice. */
export const unknownQuarter = ms(1200)
/** No slower tempo is believed when silence is measured: 20 quarters a minute. */
export const slowestQuarter = ms(3000)
/** The clock of the page runs ahead of keys that are still on their way to us. */
export const deliveryLag = ms(30)

// --- brushed keys ---------------------------------------------------------------------------

/** Very soft: under about a quarter of the range; played notes of amateurs lie at 40 to 90. */
export const brushedVelocity = 36
/** Very short: a finger that slips off; staccato of a meant note is longer. */
export const brushedLength = ms(90)

// --- standards `flow` and `time` ------------------------------------------------------------

/** Clean under 1.5 times the written gap, flawed from 2 times: the geometric mean is 1.73, less a little for long gaps. */
export const hesitationGap = 1.6
/** Flawed from 0.3 s over the written gap; half of that is still within what fast gaps vary by. */
export const hesitationOver = ms(145)
/** Gaps within 20 % are clean, 35 % one after another flawed. */
export const displacedGap = 0.29
/** Mean deviation of the gaps: an alternation by 35 % gives 0.35, amateurs' noise of 8 % gives 0.064. */
export const unevenMean = 0.2
/** One gap alone, not made good by the next. */
export const loneGap = 0.42
/** Gaps shorter than this are off by their chords' spread: deviations under 30 ms are nobody's fault. */
export const deviationLeast = ms(30)
/** Clean under 12 %, flawed from 50 %; of few gaps less is known, so more is asked. */
export const driftShare = 0.3
export const driftShareOfThree = 0.33
/** A change of the gap by less is not heard at any tempo as one of tempo. */
export const driftLeast = ms(45)
/** Clean up to 60 ms, flawed from 200; 95 of 100 chords of professionals are under 68, 99 under 178. */
export const chordSpread = ms(140)
/** Against the click: a quarter of the gap, within what is surely heard (60 ms) and surely off. */
export const clickGap = 0.25
export const clickLeast = ms(45)
export const clickMost = ms(130)
