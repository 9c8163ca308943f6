/** An invented series for which R printed the expected numbers of the specs beside it. */
export const agedMonths = [0, 0, 0, 6, 6, 6, 12, 12, 12, 24, 24, 24, 36, 36, 36]
export const agedStrengths = [10.1, 9.6, 10.4, 9.1, 8.9, 9.4, 8.3, 8.8, 8.1, 7.9, 7.5, 8.2, 7.6, 7.7, 7.2]
export const agedHeld = [2, 7, 12].reduce(
  (held, i) => held.with(i, true),
  agedMonths.map(() => false),
)
