/** Sum of the products of what stands at the same place of two lists, added from the first on. */
export function dot(one: readonly number[], other: readonly number[]): number {
  return one.reduce((sum, value, k) => sum + value * other[k]!, 0)
}
