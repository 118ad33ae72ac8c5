import { capital } from './numberWords'
import { plural } from './plural'
import { catalogue } from './text'

const minutes = (n: number): string => (n <= 1 ? 'about a minute' : `about ${n} minutes`)

/** What is still to be done in a build-up. */
export interface Left {
  readonly done: number
  readonly of: number
  readonly left: number
  /** Whole ones. */
  readonly minutes: number
  readonly isOwnPace: boolean
}

/** Build-ups and exercises. */
export const buildUpText = catalogue('buildUp', {
  title: 'Build-up',
  /** Which music, up to which tempo, and in which note value that is counted. */
  what: (bars: string, hand: string, tempo: string, beats: string) =>
    `${capital(bars)}, ${hand}, up to ${tempo} ${beats} a minute.`,
  left: ({ done, of, left, minutes: n, isOwnPace }: Left) => {
    const pace = `${minutes(n)} at ${isOwnPace ? 'your' : 'a usual'} pace.`
    return done > 0
      ? `${done} of ${of} done, ${plural(left, 'exercise')} left, ${pace}`
      : `${plural(left, 'exercise')}, ${pace}`
  },
  allDone: (n: number) => `All ${n} exercises are done.`,
  start: 'Start',
  goOn: 'Go on',
  toPiece: 'Back to the piece',
  notebook: 'Notebook',
  hands: 'Hands',
  thoroughness: { title: 'How thorough', brisk: 'brisk', thorough: 'thorough' },
  direction: {
    title: 'Order within a stage',
    forward: 'forward',
    fromTheEnd: 'from the end',
  },
  stage: (n: number) => `Stage ${n}`,
  /** Before what stands in the list, for those who do not see the sign. */
  states: { done: 'done:', next: 'next:', open: '' },
  kinds: {
    group: (size: number) => `group of ${size}`,
    bridge: 'bridge',
    pair: 'pair',
    section: 'section',
    whole: 'whole',
  },
  /** What an exercise is for, in one sentence of few words (common practice, no source). */
  purposes: {
    group: 'So few notes can be right at once.',
    bridge: 'Crosses the join of two groups.',
    pair: 'Joins two groups that go alone.',
    section: 'Joins what goes in pairs.',
    wholeOfOneHand: 'All of this hand, before the other joins it.',
    groupTogether: 'Each hand knows it: now together.',
    bridgeTogether: 'Crosses the join with both hands.',
    pairTogether: 'Joins two groups with both hands.',
    sectionTogether: 'Joins the pairs with both hands.',
    whole: 'The whole passage, up to the goal tempo.',
    asWritten: 'As it stands in the score.',
    longShort: 'Every second step is quick, with time to prepare it: for a run that is uneven.',
    shortLong: 'The other steps are quick: after long-short, each step has been quick once.',
    stopAfter3: 'Three notes, then a stop to prepare the next three: for a run that stumbles.',
    stopAfter4: 'Four notes, then a stop to prepare the next four: for a run that stumbles.',
    accentEvery3:
      'The accent comes to each finger in turn: for a weak finger. Only keys and time are judged, so listen for it.',
    accentEvery4:
      'The accent leads from group to group: for a run without direction. Only keys and time are judged, so listen for it.',
    blocked: 'The broken chord at once: the hand finds its shape before the fingers move.',
  },
})

export type BuildUpText = typeof buildUpText

/** 'group of 3', 'bridge', 'whole' */
export const nameExercise = ({
  what,
  size,
}: {
  readonly what: keyof BuildUpText['kinds']
  readonly size: number
}): string => (what === 'group' ? buildUpText.kinds.group(size) : buildUpText.kinds[what])
