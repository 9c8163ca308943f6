// Held by tests/engine/bench/capture/specimenQueue.spec.ts.
import type { Archive } from '#archive/archive.ts'
import type { BenchState } from '#contract/bench/bench.ts'
import type { SpecimenSummary } from '#contract/specimens/specimenRecord.ts'

/** What the archive says of the order in which specimens come to the press. */
export type PressOrder = {
  /** The first that waits behind one of them, past the last one the first of all; null: none does. */
  following(afterId: number | null, not: ReadonlySet<number | null>): Promise<SpecimenSummary | null>
  /** How many wait, and the breaking session that says which. */
  standing(): Promise<{ waiting: number; session: BenchState['breaking'] }>
}

/** Reads it anew each time. `invented`: specimens of the demo study are broken too. */
export function createPressOrder(archive: Pick<Archive, 'pressQueue'>, invented: boolean): PressOrder {
  return {
    async following(afterId, not) {
      const firstOf = async (after: number | null) => {
        const { rows } = await archive.pressQueue(after, not.size + 1, invented)
        return rows.find((row) => !not.has(row.specimenId)) ?? null
      }
      return (await firstOf(afterId)) ?? (afterId === null ? null : firstOf(null))
    },
    async standing() {
      const { total, session } = await archive.pressQueue(null, 0, invented)
      return { waiting: total, session }
    },
  }
}
