/** Two groups that can be told apart. */
export type ToldApart = readonly [a: string, b: string]

const alphabet = 'abcdefghijklmnopqrstuvwxyz'

/** "a" to "z", then "A" to "Z", then "a1" and so on, so that a letter never runs out. */
function letterOf(index: number): string {
  const letters = alphabet + alphabet.toUpperCase()
  const round = Math.floor(index / letters.length)
  return `${letters[index % letters.length]!}${round === 0 ? '' : round}`
}

/**
 * Letters for groups, strongest first, such that two groups share a letter exactly where they cannot be told apart.
 *
 * Insert and absorb: every set that holds both of a pair told apart is split in two; a set within another is dropped.
 * Source: Piepho, Journal of Computational and Graphical Statistics 13 (2004) 456.
 * Checked: tests/domain/findings/compare/letters.spec.ts.
 */
export function sharedLetters(strongestFirst: readonly string[], apart: readonly ToldApart[]): Record<string, string> {
  const place = new Map(strongestFirst.map((group, i) => [group, i]))
  let sets: Set<number>[] = [new Set(strongestFirst.keys())]
  for (const [a, b] of apart) {
    const i = place.get(a)
    const j = place.get(b)
    if (i === undefined || j === undefined) continue
    const split = sets.flatMap((set) => (set.has(i) && set.has(j) ? [without(set, i), without(set, j)] : [set]))
    sets = split.filter(
      (set, at) => !split.some((other, n) => n !== at && within(set, other) && (set.size < other.size || n < at)),
    )
  }
  const inOrder = sets
    .map((set) => [...set].sort((one, other) => one - other))
    .sort((one, other) => compareSets(one, other))
  return Object.fromEntries(
    strongestFirst.map((group, i) => [group, inOrder.map((set, n) => (set.includes(i) ? letterOf(n) : '')).join('')]),
  )
}

function without(set: ReadonlySet<number>, left: number): Set<number> {
  const rest = new Set(set)
  rest.delete(left)
  return rest
}

function within(set: ReadonlySet<number>, other: ReadonlySet<number>): boolean {
  for (const i of set) if (!other.has(i)) return false
  return true
}

function compareSets(one: readonly number[], other: readonly number[]): number {
  for (let i = 0; i < Math.min(one.length, other.length); i++) if (one[i] !== other[i]) return one[i]! - other[i]!
  return other.length - one.length
}
