/**
 * How many tries it takes on average until `streak` clean ones come in a row, at the clean share p:
 * (1 - p^k) / (p^k (1 - p)), the mean waiting time of a success run (Feller, An Introduction to
 * Probability Theory, vol. 1, ch. XIII; from memory). It is summed as 1/p + 1/p^2 + ... + 1/p^k,
 * which is the same and holds for p = 1 too. At 0.8 a streak of 5 takes 10.3 tries; at 0, for ever.
 */
export const expectedTries = (cleanShare: number, streak: number): number => {
  let tries = 0
  for (let k = 1; k <= streak; k++) tries += cleanShare ** -k
  return tries
}
