/**
 * Cuts a passage into what can be drilled.
 *
 * passage: the stretch that the person chose. chunk: a group of onsets so small that it can be
 * played right. border: the onset where one chunk ends and the next begins; it belongs to both, so
 * that the step across every join is practised. `proposeChunks` (propose.ts) chooses the borders,
 * on a bar line or a beat where one is near (border.ts).
 *
 * Example: two bars of 4/4 in eighths, one hand, with the first note of the third bar ->
 * four chunks of five onsets, from beat 1 to 3, from 3 to the next bar line, and so on.
 */

/** Fewer than three onsets have no inner transition to practise. */
export const leastOnsets = 3
/** What can be held in view at once and repeated without a pause for thought: about two beats of sixteenths and the joining note. */
export const mostOnsets = 10
/** Between the group of four with its joining note and a bar of 3/4 or 6/8 in eighths with its joining note. */
export const idealOnsets = 6
