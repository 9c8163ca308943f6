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
  let sets: GroupSet[] = [new Uint32Array(Math.ceil(strongestFirst.length / 32)).fill(0xffffffff)]
  for (const [a, b] of apart) {
    const i = place.get(a)
    const j = place.get(b)
    if (i === undefined || j === undefined) continue
    const both = sets.filter((set) => has(set, i) && has(set, j))
    const whole = sets.filter((set) => !both.includes(set))
    // What was whole is within nothing; only the parts can be.
    for (const part of both.flatMap((set) => [without(set, i), without(set, j)])) {
      if (whole.some((other) => within(part, other))) continue
      whole.push(part)
    }
    sets = whole.filter((set, at) => !whole.some((other, n) => n > at && within(set, other)))
  }
  const inOrder = sets
    .map((set) => [...strongestFirst.keys()].filter((i) => has(set, i)))
    .sort((one, other) => compareSets(one, other))
  return Object.fromEntries(
    strongestFirst.map((group, i) => [group, inOrder.map((set, n) => (set.includes(i) ? letterOf(n) : '')).join('')]),
  )
}

/** Groups by their places, one bit each: hundreds of pairs ask millions of times what is within what. */
type GroupSet = Uint32Array<ArrayBuffer>

const has = (set: GroupSet, i: number) => ((set[i >>> 5]! >>> (i & 31)) & 1) === 1

function without(set: GroupSet, i: number): GroupSet {
  const rest = set.slice()
  rest[i >>> 5]! &= ~(1 << (i & 31))
  return rest
}

const within = (set: GroupSet, other: GroupSet) => set.every((bits, word) => (bits & ~other[word]!) === 0)

function compareSets(one: readonly number[], other: readonly number[]): number {
  for (let i = 0; i < Math.min(one.length, other.length); i++) if (one[i] !== other[i]) return one[i]! - other[i]!
  return other.length - one.length
}
