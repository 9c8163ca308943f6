import type { RandomStream } from './random.ts'

/**
 * The same items in a random order, each order as likely as any other (Fisher and Yates).
 * Source: Knuth, The Art of Computer Programming, volume 2, algorithm 3.4.2 P. Checked: tests/domain/numbers/shuffled.spec.ts
 * by the shares of all orders.
 */
export function shuffled<Item>(items: readonly Item[], random: RandomStream): Item[] {
  const list = [...items]
  for (let last = list.length - 1; last > 0; last--) {
    const other = random.wholeBetween(0, last)
    const moved = list[last]!
    list[last] = list[other]!
    list[other] = moved
  }
  return list
}
