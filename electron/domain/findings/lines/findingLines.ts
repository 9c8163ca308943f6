import type { FindingKind, FindingLine } from '#contract/findings/lines.ts'
import type { FindingsOptions } from '#contract/findings/options.ts'
import { seriesOf } from '../ageing/series.ts'
import type { GroupValues } from '../compare/groupValues.ts'
import { type Cell, cellsOf, type Observation, type Treatment, treatedBlocks } from '../observation.ts'
import { ageingKinds, ageingLines } from './ageingLines.ts'
import { cellLines } from './cellLines.ts'
import { comparisonKinds, comparisonLines } from './comparisonLines.ts'
import type { FindingUnit } from './findingUnit.ts'

const cellKinds: readonly FindingKind[] = ['group-summary', 'censored-fit', 'survival', 'outlier']

/**
 * All findings about observations, in parts: of each group at each age, of the groups of each age beside each other, and of each
 * group over its ages; only the kinds that are asked for. A note says why a result is missing, and is kept beside the kind it is about;
 * that results are simulated is said before them, whatever is asked for.
 * Checked: tests/domain/findings/lines/findingLines.spec.ts.
 */
export function findingUnits(observations: readonly Observation[], options: FindingsOptions): FindingUnit[] {
  const wants = (kind: string) => options.only === null || (options.only as readonly string[]).includes(kind)
  // Whoever asks for notes alone is told what any kind lacks.
  const computes = (kind: string) => wants('note') || wants(kind)
  const asked = (line: FindingLine) => wants(line.kind) || (line.kind === 'note' && wants(line.about))
  const { woodFailure, limitPercent, adjustFactor } = options
  const treatment: Treatment = { woodFailure, limitPercent, adjustFactor }
  const cells = cellsOf(observations)
  const some = (kinds: readonly FindingKind[]) => kinds.some(computes)
  const settings = JSON.stringify(options)
  const unit = (of: string, data: unknown, lines: () => Iterable<FindingLine>): FindingUnit => ({
    // Written out only where it is asked for: whoever remembers nothing needs none.
    get key() {
      return `${of} ${settings} ${JSON.stringify(data)}`
    },
    *lines() {
      for (const line of lines()) if (asked(line)) yield line
    },
  })
  const simulated = simulatedNotes(cells)
  return [
    { key: `simulated ${JSON.stringify(simulated)}`, lines: () => simulated },
    ...(some(cellKinds)
      ? cells.map((cell) => unit('cell', cell, () => cellLines(cell, treatment, options, computes)))
      : []),
    ...(some(comparisonKinds)
      ? groupsByAge(cells, treatment).map(([ageMonths, groups]) =>
          unit('age', [ageMonths, groups.map(({ group, values }) => [group, ...values])], () =>
            comparisonLines(groups, ageMonths, options, computes),
          ),
        )
      : []),
    ...(some(ageingKinds)
      ? seriesOf(cells, treatment).map((series) => unit('series', series, () => ageingLines(series, options, computes)))
      : []),
  ]
}

/** The same one after the other, each worked out when it is asked for. */
export function* findingLines(observations: readonly Observation[], options: FindingsOptions): Generator<FindingLine> {
  for (const unit of findingUnits(observations, options)) yield* unit.lines()
}

/** One note where every result was made up, else one for each group at each age that holds such. */
function simulatedNotes(cells: readonly Cell[]): FindingLine[] {
  const note = { kind: 'note', about: 'results' } as const
  const simulated = cells.filter(({ counted }) => counted.some((one) => one.simulated))
  if (simulated.length === 0) return []
  if (cells.every(({ counted }) => counted.every((one) => one.simulated)))
    return [{ ...note, code: 'all-simulated', group: null, ageMonths: null }]
  return simulated.map(({ group, ageMonths }) => ({ ...note, code: 'some-simulated', group, ageMonths }))
}

/** Strengths of the groups beside each other, for each age, youngest first. */
function groupsByAge(cells: readonly Cell[], treatment: Treatment): [number | null, GroupValues[]][] {
  const byAge = new Map<number | null, GroupValues[]>()
  for (const { group, ageMonths, counted } of cells) {
    const values = Float64Array.from(treatedBlocks(counted, treatment), ({ strengthMPa }) => strengthMPa)
    const beside = byAge.get(ageMonths)
    if (beside === undefined) byAge.set(ageMonths, [{ group, values }])
    else beside.push({ group, values })
  }
  return [...byAge].sort(([one], [other]) => (one ?? -1) - (other ?? -1))
}
