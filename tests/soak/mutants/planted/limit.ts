/** A rule for the tests of the mutation command: the share of values from a limit of 25 on; it steps its loop so that a mutant never ends. */
export function shareFromLimit(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError('shareFromLimit requires at least 1 value')
  let count = 0
  for (let i = 0; i < values.length; i += 1) if (!(values[i]! < 25)) count += 1
  return count / values.length
}
