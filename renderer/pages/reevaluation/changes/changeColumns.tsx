import type { ResultChange } from '#contract/reevaluation/changes.ts'
import { overruledWords, setAsideWords } from '#words/breaks/decisionWords.ts'
import { outcomeNames } from '#words/breaks/outcomeWords.ts'
import { simulatedMark } from '#words/keeping/demoWords.ts'
import { eventAsWords, flagsAsWords, listWords } from '#words/reevaluation/changeWords.ts'
import { signedNumber } from '#words/units/numbers.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { OverruledMark } from '../../../parts/decisions/OverruledMark.tsx'
import { LongName } from '../../../widgets/tables/LongName.tsx'
import type { Column } from '../../../widgets/tables/LongTable.tsx'
import { gainedAndLost } from './gainedAndLost.ts'

export type ChangesSort = 'number' | 'difference'

const same = <span className="quiet">same</span>

type ChangeColumn = Column<ResultChange, ChangesSort>

/** The columns of the table of what changed; forces in the units that the program shows. */
export function changeColumns(quantities: Quantities): ChangeColumn[] {
  return [...blockColumns, ...peakColumns(quantities), ...wordColumns]
}

/** Which block it was, and how its loading ended. */
const blockColumns: ChangeColumn[] = [
  {
    key: 'number',
    title: 'Specimen',
    sort: 'number',
    width: '11%',
    cell: (row) => (
      <span className="change-name">
        {row.number === null ? (
          <span className="quiet">break {row.breakId}</span>
        ) : (
          <strong>
            <LongName name={row.number} />
          </strong>
        )}
        <span className="change-aside quiet" title={row.setAside === null ? undefined : setAsideWords(row)}>
          {[row.setAside === null ? null : 'set aside', row.simulated ? simulatedMark : null]
            .filter((words) => words !== null)
            .join(', ')}
        </span>
      </span>
    ),
  },
  {
    key: 'adhesive',
    title: 'Adhesive',
    width: '17%',
    cell: (row) => <span title={row.adhesive ?? undefined}>{row.adhesive ?? ''}</span>,
  },
  {
    key: 'outcome',
    title: 'Outcome',
    width: '8%',
    cell: (row) => (
      <Pair
        changed={row.changed.outcome}
        before={outcomeNames[row.before.outcome]}
        now={outcomeNames[row.now.outcome]}
      />
    ),
  },
]

/** The peak before and now. */
function peakColumns({ force }: Pick<Quantities, 'force'>): ChangeColumn[] {
  return [
    {
      key: 'before',
      title: 'Peak before',
      unit: force.unit,
      numeric: true,
      width: '9%',
      cell: (row) => force.number(row.before.peakN),
    },
    {
      key: 'now',
      title: 'Peak now',
      unit: force.unit,
      numeric: true,
      width: '8%',
      cell: (row) => (
        <>
          {row.changed.peak ? <strong>{force.number(row.now.peakN)}</strong> : force.number(row.now.peakN)}
          <OverruledMark overruled={row.overruled} />
        </>
      ),
    },
    {
      key: 'differenceN',
      title: 'Difference',
      unit: force.unit,
      numeric: true,
      width: '9%',
      cell: ({ changed, differenceN }) =>
        changed.peak ? signedNumber(differenceN === null ? null : differenceN * force.factor, 1) : same,
    },
    {
      key: 'difference',
      title: '%',
      sort: 'difference',
      numeric: true,
      width: '8%',
      cell: ({ changed, differencePercent }) => (changed.peak ? signedNumber(differencePercent, 2) : same),
    },
  ]
}

/** What the result is to be read with, and what happened on the curve. */
const wordColumns: ChangeColumn[] = [
  {
    key: 'flags',
    title: 'Remarks',
    width: '14%',
    cell: (row) => (
      <Lists changed={row.changed.flags} before={flagsAsWords(row.before.flags)} now={flagsAsWords(row.now.flags)} />
    ),
  },
  {
    key: 'events',
    title: 'Events',
    width: '16%',
    cell: (row) => (
      <Lists
        changed={row.changed.events}
        before={row.before.events.map(eventAsWords)}
        now={row.now.events.map(eventAsWords)}
      />
    ),
  },
]

function Pair({ changed, before, now }: { changed: boolean; before: string; now: string }) {
  if (!changed) return now
  return (
    <span className="two-lines">
      <span className="quiet">{before}</span>
      <br />
      <strong>{now}</strong>
    </span>
  )
}

/** What came and what went; the whole of both lists when pointed at. */
function Lists({ changed, before, now }: { changed: boolean; before: string[]; now: string[] }) {
  if (!changed) return <span className="two-lines quiet">{listWords(now)}</span>
  const { gained, lost } = gainedAndLost(before, now)
  return (
    <span className="two-lines" title={`before: ${listWords(before)}\nnow: ${listWords(now)}`}>
      {gained.length === 0 ? null : (
        <strong>
          {'+\u00a0'}
          {gained.join(', ')}{' '}
        </strong>
      )}
      {lost.length === 0 ? null : (
        <span>
          {'−\u00a0'}
          {lost.join(', ')}
        </span>
      )}
      {gained.length + lost.length === 0 ? 'in another order' : null}
    </span>
  )
}

/** How a row is read out. */
export function changeLabel(row: ResultChange, { force }: Quantities): string {
  const parts = [
    row.changed.outcome ? `outcome ${outcomeNames[row.before.outcome]}, now ${outcomeNames[row.now.outcome]}` : null,
    row.changed.peak ? `peak ${force.text(row.before.peakN)}, now ${force.text(row.now.peakN)}` : null,
    row.changed.flags ? 'other remarks' : null,
    row.changed.events ? 'other events' : null,
  ].filter((part) => part !== null)
  const said = [
    row.simulated ? simulatedMark : null,
    row.overruled === null ? null : overruledWords(row.overruled),
    row.setAside === null ? null : `set aside: ${setAsideWords(row)}`,
  ].filter((part) => part !== null)
  const what = [parts.length === 0 ? 'nothing changed' : parts.join('; '), ...said].join('; ')
  return `break ${row.breakId}, ${row.number ?? 'no specimen'}: ${what}`
}
