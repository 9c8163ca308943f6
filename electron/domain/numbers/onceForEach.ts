/**
 * A costly function of a few numbers, worked out once for each set of them and kept from then on: for numbers of which there are few
 * different ones, as the sizes of groups are. Checked: tests/domain/numbers/onceForEach.spec.ts.
 */
export function onceForEach<Numbers extends readonly number[]>(
  work: (...numbers: Numbers) => number,
): (...numbers: Numbers) => number {
  const known = new Map<string, number>()
  return (...numbers) => {
    const key = numbers.join(' ')
    const found = known.get(key) ?? work(...numbers)
    known.set(key, found)
    return found
  }
}
