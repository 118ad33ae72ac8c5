/**
 * Cuts a passage into what can be drilled, and orders it.
 *
 * passage: the stretch that the person chose. chunk: a group of onsets so small that it can be
 * played right. border: the onset where one chunk ends and the next begins; it belongs to both, so
 * that the step across every join is practised. `proposeChunks` (propose.ts) chooses the borders,
 * on a bar line or a beat where one is near (border.ts). variant: a chunk in another form, with its own
 * small score (variants.ts). build-up: the ordered exercises from groups of three to the whole
 * (buildUp.ts); bridges cross the joins of groups; progress.ts says what is next.
 *
 * Example: nine quarters in 4/4, one hand, brisk -> the groups 1 to 5 and 5 to 9, the bridge 3 to 7,
 * the whole.
 */

/** Fewer than three onsets have no inner transition to practise. */
export const leastOnsets = 3
/** What can be held in view at once and repeated without a pause for thought: about two beats of sixteenths and the joining note. */
export const mostOnsets = 10
/** Between the group of four with its joining note and a bar of 3/4 or 6/8 in eighths with its joining note. */
export const idealOnsets = 6
