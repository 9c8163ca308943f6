/** The one whose value lies farthest from zero, the first of equals; null: there is none. */
export function farthestFromZero<One>(ones: readonly One[], value: (one: One) => number): One | null {
  let farthest: One | null = null
  for (const one of ones) if (farthest === null || Math.abs(value(one)) > Math.abs(value(farthest))) farthest = one
  return farthest
}
