import { type AgeingModelName, ageingModelNames, meanAt } from '#domain/findings/ageing/ageingModels.ts'
import { createRandom } from '#domain/numbers/random.ts'

/** One block of a random series: `set` numbers it, `held` where the wood failed first. */
export type RandomAged = { set: number; age: number; strength: number; held: boolean }

const truths: Record<AgeingModelName, () => number[]> = {
  constant: () => [10],
  linear: () => [10, -0.05],
  'log-time': () => [10, -0.8],
  'square-root-time': () => [10, -0.5],
  'exponential-approach': () => [10, 6, 12],
}

/** Series of five to seven ages from a kept seed, their truth each model in turn, every third rounded so that strengths tie. */
export function randomSeries(count: number): RandomAged[] {
  const blocks: RandomAged[] = []
  for (let set = 1; set <= count; set++) {
    const random = createRandom(set, 41)
    const model = ageingModelNames[set % ageingModelNames.length]!
    const ages = [0, 3, 6, 12, 24, 36, 60].slice(0, random.wholeBetween(5, 7))
    const sd = random.between(0.2, 1.2)
    for (const age of ages)
      for (let i = random.wholeBetween(2, 8); i > 0; i--) {
        const strength = meanAt(model, age, truths[model]()) + sd * random.normal()
        blocks.push({
          set,
          age,
          strength: Number(Math.max(strength, 0.5).toFixed(set % 3 === 0 ? 1 : 4)),
          held: random.unit() < 0.2,
        })
      }
  }
  return blocks
}

/** The series as the table that the R script reads. */
export function seriesCsv(blocks: readonly RandomAged[]): string {
  const rows = blocks.map(({ set, age, strength, held }) => [set, age, strength, held ? 1 : 0].join(','))
  return `set,age,strength,held\n${rows.join('\n')}\n`
}
