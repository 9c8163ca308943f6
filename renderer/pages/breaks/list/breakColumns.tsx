import type { BreakRow } from '#contract/breaks/break.ts'
import { setAsideWords } from '#words/breaks/decisionWords.ts'
import { flagListWords } from '#words/breaks/flagWords.ts'
import { outcomeWord } from '#words/breaks/outcomeWords.ts'
import { writeTenths } from '#words/units/numbers.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { instantWords } from '#words/units/times.ts'
import { OverruledMark } from '../../../parts/decisions/OverruledMark.tsx'
import { blockColumns } from '../../../parts/lists/columns/blockColumns.tsx'
import type { ListColumn } from '../../../parts/lists/columns/chosenColumns.ts'
import type { ListView } from '../../../parts/lists/usePagedList.ts'
import { LongName } from '../../../widgets/tables/LongName.tsx'

export type BreakSort = NonNullable<ListView['sort']>

type BreakColumn = ListColumn<BreakRow, BreakSort>

/** All columns that the list of breaks can show. */
export function breakColumns(quantities: Quantities): BreakColumn[] {
  return [...specimenOfBreak(quantities), ...resultColumns(quantities), ...remarkColumns]
}

/** When it was, and what was broken. */
function specimenOfBreak(quantities: Quantities): BreakColumn[] {
  const { area } = quantities
  const { lot, wood, board, place, gap, gluedOn, age, study } = blockColumns<BreakRow, BreakSort>(
    quantities,
    ({ block }) => block,
  )
  return [
    {
      key: 'when',
      title: 'When',
      sort: 'startedAt',
      weight: 17,
      atFirst: true,
      cell: (row) => instantWords(row.startedAt),
    },
    {
      key: 'number',
      title: 'Specimen',
      sort: 'number',
      weight: 13,
      atFirst: true,
      cell: (row) =>
        row.number === null ? (
          <span className="quiet">none</span>
        ) : (
          <strong>
            <LongName name={row.number} />
          </strong>
        ),
    },
    {
      key: 'adhesive',
      title: 'Adhesive',
      sort: 'adhesive',
      weight: 15,
      atFirst: true,
      cell: (row) => <span title={row.adhesive ?? undefined}>{row.adhesive ?? ''}</span>,
    },
    ...[lot, wood, board],
    {
      key: 'jointType',
      title: 'Joint',
      sort: 'jointType',
      weight: 18,
      atFirst: false,
      cell: (row) => <span title={row.jointType ?? undefined}>{row.jointType ?? ''}</span>,
    },
    {
      key: 'exposure',
      title: 'Exposure',
      sort: 'exposure',
      weight: 9,
      atFirst: false,
      cell: (row) => row.exposure ?? '',
    },
    ...[place, gap, gluedOn, age, study],
    {
      key: 'area',
      title: 'Area',
      unit: area.unit,
      numeric: true,
      weight: 8,
      atFirst: false,
      cell: (row) => area.number(row.areaMm2),
    },
  ]
}

function resultColumns({ force, strength }: Quantities): BreakColumn[] {
  return [
    {
      key: 'outcome',
      title: 'Outcome',
      weight: 8,
      atFirst: true,
      cell: (row) => <span title={row.setAside === null ? undefined : setAsideWords(row)}>{outcomeWord(row)}</span>,
    },
    {
      key: 'peak',
      title: 'Peak',
      unit: force.unit,
      sort: 'peakN',
      numeric: true,
      weight: 9,
      atFirst: true,
      cell: (row) => (
        <>
          <OverruledMark overruled={row.overruled} /> {force.number(row.peakN)}
        </>
      ),
    },
    {
      key: 'strength',
      title: 'Strength',
      unit: strength.unit,
      sort: 'strengthMPa',
      numeric: true,
      weight: 10,
      atFirst: true,
      cell: (row) => strength.number(row.strengthMPa),
    },
    {
      key: 'wood',
      title: 'Wood f.',
      unit: '%',
      sort: 'woodFailurePercent',
      numeric: true,
      weight: 8,
      atFirst: true,
      cell: (row) => writeTenths(row.woodFailurePercent),
    },
  ]
}

const remarkColumns: readonly BreakColumn[] = [
  {
    key: 'note',
    title: 'Note',
    weight: 18,
    atFirst: false,
    cell: (row) => <span title={row.note}>{row.note}</span>,
  },
  {
    key: 'flags',
    title: 'Remarks',
    weight: 23,
    atFirst: true,
    cell: (row) => <span title={flagListWords(row)}>{flagListWords(row, 2)}</span>,
  },
]
