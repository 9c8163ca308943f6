// Held by tests/engine/programme/studyHandlers.spec.ts.
import { cellsOf } from '#domain/findings/observation.ts'
import { observedBreaks } from '#domain/findings/observedBreak.ts'
import { traitsKey } from '#domain/programme/study/plannedAges.ts'
import { type PooledVariation, pooledVariation } from '#domain/programme/study/pooledVariation.ts'
import type { Database } from '../core/database.ts'
import { observations } from './observations.ts'

/** Spread within the groups of an archive, blocks that were set aside left out; null: no group has two. `pullOf` as of `observations`. */
export function observedVariation(
  database: Database,
  pullOf: Parameters<typeof observations>[1],
): PooledVariation | null {
  const groups = cellsOf(observedBreaks(observations(database, pullOf), traitsKey))
  return pooledVariation(groups.map(({ counted }) => counted.map(({ strengthMPa }) => strengthMPa)))
}
