import type { BreakSummary } from '#contract/breaks/break.ts'
import type { SpecimenSummary } from '#contract/specimens/specimenRecord.ts'
import { flagListWords, flagNames } from '#words/breaks/flagWords.ts'
import { isUncalibrated } from '#words/calibration/scaleWords.ts'
import { isSimulated, simulatedMark } from '#words/keeping/demoWords.ts'
import { waitingWords } from '#words/specimens/resultsWords.ts'
import { typedSourceWords } from '#words/specimens/typedResultWords.ts'
import { calendarDayWords } from '#words/units/calendarDays.ts'
import { writeTenths } from '#words/units/numbers.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { dayWords } from '#words/units/times.ts'
import { OverruledMark } from '../../../parts/decisions/OverruledMark.tsx'
import { blockColumns } from '../../../parts/lists/columns/blockColumns.tsx'
import type { ListColumn } from '../../../parts/lists/columns/chosenColumns.ts'
import type { ListView } from '../../../parts/lists/usePagedList.ts'
import { LongName } from '../../../widgets/tables/LongName.tsx'
import './specimenList.css'

export type SpecimenSort = NonNullable<ListView['sort']>
type SpecimenColumn = ListColumn<SpecimenSummary, SpecimenSort>

/** The result that counts: of a break, or one without a curve. */
const resultOf = (row: SpecimenSummary) => row.breakInForce ?? row.typedResultInForce

/** All columns that the list of specimens can show. `atHand`: the specimen on the bench. */
export function specimenColumns(quantities: Quantities, atHand: number | null): SpecimenColumn[] {
  const { lot, wood, board, place, gap, gluedOn, age, study } = blockColumns<SpecimenSummary, SpecimenSort>(
    quantities,
    ({ named, fields, ageMonths, study }) => ({ ...named, ...fields, ageMonths, study }),
  )
  return [
    numberColumn(atHand),
    named('adhesive', { title: 'Adhesive', sort: 'adhesive', weight: 15 }),
    ...[lot, wood, board],
    named('jointType', { title: 'Joint', sort: 'jointType', weight: 21 }),
    named('exposure', { title: 'Exposure', sort: 'exposure', weight: 7 }),
    ...[place, gap, gluedOn, age, study],
    areaColumn(quantities),
    ...resultColumns(quantities),
  ]
}

const numberColumn = (atHand: number | null): SpecimenColumn => ({
  key: 'number',
  title: 'Number',
  sort: 'number',
  weight: 12,
  atFirst: true,
  cell: (row) => (
    <>
      <strong>
        <LongName name={row.fields.number} />
      </strong>
      {row.specimenId === atHand ? <span className="at-hand-mark"> at hand</span> : null}
    </>
  ),
})

const named = (
  key: 'adhesive' | 'jointType' | 'exposure',
  column: Pick<SpecimenColumn, 'title' | 'weight'> & { sort: SpecimenSort },
): SpecimenColumn => ({
  ...column,
  ...{ key, atFirst: true },
  cell: ({ named }) => <span title={named[key]}>{named[key]}</span>,
})

const areaColumn = ({ area }: Quantities): SpecimenColumn => ({
  key: 'area',
  title: 'Area',
  unit: area.unit,
  numeric: true,
  weight: 7,
  atFirst: true,
  cell: (row) => area.number(row.fields.areaMm2),
})

function resultColumns({ force, strength }: Quantities): SpecimenColumn[] {
  return [
    {
      key: 'brokeOn',
      title: 'Broke on',
      sort: 'startedAt',
      weight: 12,
      atFirst: false,
      cell: ({ breakInForce, typedResultInForce }) => {
        if (breakInForce !== null) return dayWords(breakInForce.startedAt)
        const brokenOn = typedResultInForce?.brokenOn ?? null
        return brokenOn === null ? '' : calendarDayWords(brokenOn)
      },
    },
    {
      key: 'peak',
      title: 'Peak',
      unit: force.unit,
      sort: 'peakN',
      numeric: true,
      weight: 7,
      atFirst: true,
      cell: (row) => <Peak row={row} force={force} />,
    },
    {
      key: 'strength',
      title: 'Strength',
      unit: strength.unit,
      sort: 'strengthMPa',
      numeric: true,
      weight: 10,
      atFirst: true,
      cell: (row) => (resultOf(row) === null ? '' : strength.number(resultOf(row)!.strengthMPa)),
    },
    {
      key: 'wood-failure',
      title: 'Wood f.',
      unit: '%',
      sort: 'woodFailurePercent',
      numeric: true,
      weight: 8,
      atFirst: true,
      cell: (row) => (resultOf(row) === null ? '' : writeTenths(resultOf(row)!.woodFailurePercent)),
    },
    {
      key: 'state',
      title: 'Status',
      weight: 13,
      atFirst: true,
      cell: (row) =>
        row.breakInForce === null ? (
          <WithoutBreak row={row} force={force} />
        ) : (
          <span title={flagListWords(row.breakInForce)}>{stateWords(row.breakInForce)}</span>
        ),
    },
  ]
}

function Peak({ row, force }: { row: SpecimenSummary; force: Quantities['force'] }) {
  const { breakInForce, typedResultInForce } = row
  if (breakInForce === null) return typedResultInForce === null ? '' : force.number(typedResultInForce.peakN)
  return (
    <>
      <OverruledMark overruled={breakInForce.overruled} /> {force.number(breakInForce.peakN)}
    </>
  )
}

/** How the strength of a specimen stands: that it is not the only one comes first, then what a person put in place of the peak. */
function stateWords(summary: BreakSummary): string {
  const { overruled, scaleKind, resultsOfSpecimen } = summary
  if (resultsOfSpecimen > 1) return `${resultsOfSpecimen} results`
  if (overruled !== null) return flagNames[overruled.kind]
  if (isSimulated(summary)) return `broke, ${simulatedMark}`
  return isUncalibrated(scaleKind) ? 'broke, uncalibrated' : 'broke'
}

/** How a specimen without a break that counts stands: with a result without a curve, from where; or waiting. */
function WithoutBreak({ row, force }: { row: SpecimenSummary; force: Quantities['force'] }) {
  const typed = row.typedResultInForce
  if (typed === null) return withoutResult(row)
  const source = typedSourceWords(typed, force.text)
  return <span title={source}>{source}</span>
}

function withoutResult(row: SpecimenSummary): string {
  if (row.withdrawn !== null) return 'withdrawn'
  return isSimulated(row.fields) ? `${waitingWords(row)}, ${simulatedMark}` : waitingWords(row)
}
