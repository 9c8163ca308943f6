import { createRandom } from '#domain/numbers/random.ts'

/** One block of a random study. */
export type RandomBlock = { set: number; group: string; strength: number; held: boolean; age: number }

/**
 * Random studies from a kept seed: two to six groups of three to twelve blocks, spreads alike or not, every third study rounded so
 * that values tie; blocks of wood that held, and ages at which the blocks were broken.
 */
export function randomStudies(count: number): RandomBlock[] {
  const blocks: RandomBlock[] = []
  for (let set = 1; set <= count; set++) {
    const random = createRandom(set, 40)
    const groups = random.wholeBetween(2, 6)
    const alike = random.unit() < 0.5
    const decimals = set % 3 === 0 ? 0 : 4
    for (let g = 0; g < groups; g++) {
      const n = random.wholeBetween(3, 12)
      const mean = random.between(6, 14)
      const sd = alike ? 1.5 : random.between(0.4, 3)
      for (let i = 0; i < n; i++) {
        const strength = Math.max(0.5, Number((mean + sd * random.normal()).toFixed(decimals)))
        const age = [0, 6, 12, 24, 36][i % 5]!
        blocks.push({ set, group: `g${g}`, strength, held: i > 1 && random.unit() < 0.25, age })
      }
    }
  }
  return blocks
}

/** The studies as the table that the R script reads. */
export function studiesCsv(blocks: readonly RandomBlock[]): string {
  const rows = blocks.map(({ set, group, strength, held, age }) => [set, group, strength, held ? 1 : 0, age].join(','))
  return `set,group,strength,held,age\n${rows.join('\n')}\n`
}
