import type { ArchiveReader } from '#archive/archiveReader.ts'
import type { ClimateLimits, ClimateStore } from '#contract/findings/climate.ts'
import { climateLimits } from '#contract/findings/climate.ts'
import type { ClimateOfStore, ExposureClimate, StoreClimate } from '#contract/findings/climateAnswers.ts'
import { storeClimate } from '#domain/climate/storeClimate.ts'
import { storedSeries } from '#domain/climate/storedSeries.ts'

export type ClimateArchive = Pick<
  ArchiveReader,
  'climateReadings' | 'climateStores' | 'observations' | 'specimensOfStore'
>

/** What was worked out of the readings of a store, until others count. */
export type ClimateMemory = Map<string, StoreClimate | null>

/** So many stores and limits are remembered. */
const mostRemembered = 24

function climateOf(
  archive: ClimateArchive,
  { store, imports }: { store: ClimateStore; imports: readonly number[] },
  limits: ClimateLimits,
  memory: ClimateMemory,
): StoreClimate | null {
  const key = JSON.stringify([store, imports, limits])
  const known = memory.get(key)
  if (known !== undefined) return known
  const found = storeClimate(archive.climateReadings(store).series, limits)
  if (memory.size >= mostRemembered) memory.delete(memory.keys().next().value!)
  memory.set(key, found)
  return found
}

/** The climate of a store and the strength of the blocks in it, as the archive is now. */
export function answerClimate(
  archive: ClimateArchive,
  { store: wanted, limits }: { store: ClimateStore; limits: ClimateLimits },
  memory: ClimateMemory,
): ClimateOfStore {
  const known = archive.climateStores().find(({ store }) => store.kind === wanted.kind && store.name === wanted.name)
  const stored = new Set(archive.specimensOfStore(wanted))
  return {
    store: wanted,
    simulated: known?.simulated ?? false,
    climate: known === undefined ? null : climateOf(archive, known, limits, memory),
    series: storedSeries(archive.observations().filter(({ specimenId }) => stored.has(specimenId))),
  }
}

/** What each exposure that has readings did to its blocks. */
export function answerExposures(archive: ClimateArchive, memory: ClimateMemory): ExposureClimate[] {
  return archive.climateStores().flatMap((known) => {
    if (known.store.kind !== 'exposure') return []
    const found = climateOf(archive, known, climateLimits.parse({}), memory)
    if (found === null) return []
    const { fromS, toS, whole } = found
    return [{ exposure: known.store.name, fromS, toS, simulated: known.simulated, whole }]
  })
}
