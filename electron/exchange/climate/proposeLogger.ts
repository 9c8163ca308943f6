// Held by tests/exchange/climate/proposeMapping.spec.ts.
import type { ClimateMapping } from '#contract/findings/climate.ts'
import type { ClimateProposal } from '#contract/findings/climateAnswers.ts'
import { openLogger } from './loggerTable.ts'
import { proposeMapping } from './proposeMapping.ts'

/** What the columns of a logger's file may mean. Rejects with a Trouble that names the file. */
export async function proposeLogger(
  file: string,
  bytes: Buffer,
  said: { sheet: string | null; headerRow: number | null; earlier: readonly ClimateMapping[] },
): Promise<ClimateProposal> {
  const sheet = said.sheet === null ? {} : { sheet: said.sheet }
  const table = await openLogger(file, bytes, { ...sheet, headerRow: said.headerRow ?? 1 })
  return proposeMapping(table, said.headerRow, said.earlier)
}
