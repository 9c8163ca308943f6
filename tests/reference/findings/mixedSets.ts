import { createRandom } from '#domain/numbers/random.ts'

/** Blocks of random studies with boards and ages: `set` numbers the study. */
export type MixedBlock = { set: number; group: string; board: string; ageMonths: number; strength: number }

/** Studies drawn up by chance: some with boards that differ much, some with boards that do not; slopes that spread, or do not. */
export function mixedStudies(count: number): MixedBlock[] {
  const random = createRandom(20_261_130)
  const blocks: MixedBlock[] = []
  for (let set = 0; set < count; set++) {
    const groups = 3 + Math.floor(random.unit() * 5)
    const boards = 3 + Math.floor(random.unit() * 8)
    const boardSd = set % 3 === 0 ? 0 : 0.2 + 1.5 * random.unit()
    const slopeSd = set % 4 === 0 ? 0 : 0.01 + 0.03 * random.unit()
    const above = Array.from({ length: boards }, () => boardSd * random.normal())
    for (let g = 0; g < groups; g++) {
      const slope = -0.02 + slopeSd * random.normal()
      const start = 6 + 6 * random.unit()
      for (const ageMonths of [0, 6, 12, 24].slice(0, 2 + Math.floor(random.unit() * 3)))
        for (let i = 0; i < 3 + Math.floor(random.unit() * 6); i++) {
          const board = Math.floor(random.unit() * boards)
          const strength = (start + above[board]! + 0.8 * random.normal()) * Math.exp((slope * ageMonths) / 12)
          blocks.push({ set, group: `A${g}`, board: `B${board}`, ageMonths, strength: Math.max(strength, 0.5) })
        }
    }
  }
  return blocks
}

export function mixedCsv(blocks: readonly MixedBlock[]): string {
  const rows = blocks.map(({ set, group, board, ageMonths, strength }) =>
    [set, group, board, ageMonths, strength].join(),
  )
  return ['set,group,board,age,strength', ...rows].join('\n')
}
