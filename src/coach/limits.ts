/**
 * Every threshold of the coach in one table, each with its reason. "Common practice" has no source;
 * "computed" follows from the arithmetic beside it.
 */
export const limits = {
  /**
   * Clean repetitions in a row before the tempo rises. After five of five the 95 % upper bound of the
   * true error rate is still 0.45 (computed: 1 - 0.05^(1/5)), and at eight of ten clean a streak of ten
   * takes 42 tries: five is common practice, three is the least that says anything.
   */
  streakGoal: { least: 3, usual: 5, most: 10 },

  /** Percentage steps. Under 3 % a step is felt as the same tempo (Drake & Botte 1993); over 8 % it is a jump. */
  percent: { least: 3, usual: 4, most: 8 },

  /** A drill starts at 50 to 60 % of the goal tempo (common practice). */
  startShare: { least: 0.5, usual: 0.55 },

  /**
   * The trial for the start tempo. Three of three clean at a rung (common practice). The first step up
   * is two rungs, about a tenth of the tempo, then twice as far each time. One try that breaks off is
   * let pass at each rung; a second one has its reason. Sixteen tries at most: more is a drill already.
   */
  trial: { cleanOf: 3, firstStride: 2, brokenOff: 1, repetitions: 16 },

  /** A rung nearer to the goal than this share is left out: it is felt as the goal itself (Drake & Botte 1993). */
  sameTempo: 0.02,

  /** Two flawed in a row: the third would practise the slip (common practice). */
  pauseAfterFlawed: 2,

  /** Hands off and look. A repetition that starts sooner than this was played through the pause (common practice). */
  pauseMs: 4_000,

  /** After two or three failures one step down (common practice). */
  flawedOfLast: { flawed: 3, of: 5 },

  /**
   * More flawed than clean: the share of clean trials goes with what is kept the next day, their number
   * does not (Duke, Simmons & Cash 2009).
   */
  lowShare: { under: 0.5, of: 8 },

  /**
   * The same flaw at the same place twice is a learned error rather than chance: with one slip in five
   * tries, spread over ten places, chance alone puts two on one place in 15 runs of ten tries of a
   * hundred, and in 6 where there are three kinds of slip (computed). Consistent errors are a class of
   * their own (Repp 1996).
   */
  sameFlaw: { times: 2, withinRepetitions: 10 },

  /**
   * The arithmetic of streaks is told from ten repetitions at one tempo on, and after ten more. Five of
   * eight clean say little: the share may be 0.29 to 0.89 (computed, exact 90 % interval); six of ten, 0.30 to 0.85.
   */
  advice: { every: 10 },

  /**
   * Three clean in a row solve a remedy: it is small and slow, and the drill itself asks for more (common
   * practice). Ten repetitions of the drill without the flaw, as many as make it a problem when it comes
   * twice, and it helped.
   */
  remedy: { streak: 3, watched: 10 },

  /** One place at a time, then another: turns serve better than one long block (Carter & Grahn 2016). */
  onePlace: { minutes: 7, repetitions: 60 },

  /** A break of five minutes after twenty-five, at the latest after fifty (guides to musicians' health). */
  rest: { minutes: 25, strongMinutes: 50, lengthMinutes: 5 },

  /** Strokes of the last repetitions that the page shows: eight gates of five. */
  recent: 40,
} as const
