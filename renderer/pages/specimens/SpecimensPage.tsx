import { useCallback } from 'react'
import type { BreakSummary } from '#contract/breaks/break.ts'
import type { SpecimenSummary } from '#contract/specimens/specimenRecord.ts'
import { overruledWords } from '#words/breaks/decisionWords.ts'
import { flagListWords, flagNames } from '#words/breaks/flagWords.ts'
import { isUncalibrated } from '#words/calibration/scaleWords.ts'
import { isSimulated, simulatedMark } from '#words/keeping/demoWords.ts'
import { unreadableTrouble } from '#words/keeping/unreadableWords.ts'
import { resultsWords, waitingWords } from '#words/specimens/resultsWords.ts'
import { peakOnlyMark, typedSourceWords } from '#words/specimens/typedResultWords.ts'
import { writeCount } from '#words/units/numbers.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { useBench, useHost } from '../../host/hostContext.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { OverruledMark } from '../../parts/decisions/OverruledMark.tsx'
import { ListTools } from '../../parts/lists/ListTools.tsx'
import { useListView } from '../../parts/lists/listViewStore.ts'
import { specimenSelection } from '../../parts/lists/selectionStore.ts'
import { type ListView, usePagedList } from '../../parts/lists/usePagedList.ts'
import { useRowSelection } from '../../parts/lists/useRowSelection.ts'
import { go } from '../../parts/routing/useRoute.ts'
import { hashOf } from '../../routes/route.ts'
import { Notice } from '../../widgets/Notice.tsx'
import { LongName } from '../../widgets/tables/LongName.tsx'
import { type Column, LongTable } from '../../widgets/tables/LongTable.tsx'
import { SpecimenActs } from './SpecimenActs.tsx'
import './specimens.css'

type Sort = NonNullable<ListView['sort']>

/** Every specimen, with its break in force if it has one. */
export function SpecimensPage() {
  const [view, onView] = useListView('specimens', { sort: 'number' })
  const list = usePagedList('specimens.list', view)
  const { client } = useHost()
  const askIds = useCallback(() => client.call('specimens.ids', view), [client, view])
  const selection = useRowSelection({
    ...{ selection: specimenSelection, rowAt: list.rowAt, idOf: specimenIdOf, askIds },
    boxLabel: (row) => `Select specimen ${row.fields.number}`,
  })
  const quantities = useQuantities()
  const { specimen: atHand } = useBench()
  const sort = view.sort ?? 'number'
  const descending = view.descending ?? false
  return (
    <div className="list-page">
      <ListTools
        title="Specimens"
        view={view}
        onView={onView}
        total={list.pending && list.total === 0 ? '' : countWords(list.total)}
        withWaiting
      >
        <a className="button" href={hashOf({ page: 'import' })}>
          Import
        </a>
        <a className="button" href={hashOf({ page: 'readings' })}>
          Dial readings
        </a>
        <a className="button" href={hashOf({ page: 'glue-ups' })}>
          Glue-ups
        </a>
        <a className="button" href={hashOf({ page: 'catalogue' })}>
          Catalogue
        </a>
        <a className="button button-primary" href={hashOf({ page: 'new-specimen' })}>
          Add specimen
        </a>
      </ListTools>
      <Notice trouble={list.error ?? unreadableTrouble(list.newest?.unreadable)} />
      <LongTable<SpecimenSummary, Sort>
        label="Specimens"
        listKey={JSON.stringify(view)}
        columns={columnsIn(quantities, atHand?.specimenId ?? null)}
        total={list.total}
        rowAt={list.rowAt}
        onSight={list.onSight}
        sort={sort}
        descending={descending}
        onSort={(next) => onView({ sort: next, descending: next === sort ? !descending : false })}
        onOpen={(row) => go({ page: 'specimen', specimenId: row.specimenId })}
        rowLabel={specimenRowLabel}
        empty={
          list.pending ? (
            ''
          ) : view.text || (view.status ?? 'all') !== 'all' ? (
            'No specimen fits the search and filter.'
          ) : (
            <>
              No specimens yet. <a href={hashOf({ page: 'new-specimen' })}>Add the first one</a>.
            </>
          )
        }
        selection={selection.rows}
      />
      <SpecimenActs selection={selection} total={list.total} />
    </div>
  )
}

const specimenIdOf = ({ specimenId }: SpecimenSummary) => specimenId

/** How the strength of a specimen stands: that it is not the only one comes first, then what a person put in place of the peak. */
function stateWords(summary: BreakSummary): string {
  const { overruled, scaleKind, resultsOfSpecimen } = summary
  if (resultsOfSpecimen > 1) return `${resultsOfSpecimen} results`
  if (overruled !== null) return flagNames[overruled.kind]
  if (isSimulated(summary)) return `broke, ${simulatedMark}`
  return isUncalibrated(scaleKind) ? 'broke, uncalibrated' : 'broke'
}

const resultOf = (row: SpecimenSummary) => row.breakInForce ?? row.typedResultInForce

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

/** How a row is read out: with the reason where a person overruled the peak that counts. */
function specimenRowLabel({ fields, breakInForce, typedResultInForce, results }: SpecimenSummary): string {
  const simulated = isSimulated(breakInForce ?? fields) ? `, ${simulatedMark}` : ''
  const several = resultsWords(results)
  const words = `${fields.number}, ${fields.adhesive}${simulated}${several === null ? '' : `, ${several}`}${typedResultInForce === null ? '' : `, ${peakOnlyMark}`}`
  const overruled = breakInForce?.overruled ?? null
  return overruled === null ? words : `${words}, ${overruledWords(overruled)}`
}

function countWords(total: number): string {
  return total === 1 ? '1 specimen' : `${writeCount(total)} specimens`
}

function columnsIn({ force, strength, area }: Quantities, atHand: number | null): Column<SpecimenSummary, Sort>[] {
  return [
    {
      key: 'number',
      title: 'Number',
      sort: 'number',
      width: '12%',
      cell: (row) => (
        <>
          <strong>
            <LongName name={row.fields.number} />
          </strong>
          {row.specimenId === atHand ? <span className="at-hand-mark"> at hand</span> : null}
        </>
      ),
    },
    {
      key: 'adhesive',
      title: 'Adhesive',
      sort: 'adhesive',
      width: '15%',
      cell: (row) => <span title={row.fields.adhesive}>{row.fields.adhesive}</span>,
    },
    { key: 'joint', title: 'Joint', sort: 'jointType', width: '21%', cell: (row) => row.fields.jointType },
    { key: 'exposure', title: 'Exposure', sort: 'exposure', width: '7%', cell: (row) => row.fields.exposure },
    {
      key: 'area',
      title: 'Area',
      unit: area.unit,
      numeric: true,
      width: '7%',
      cell: (row) => area.number(row.fields.areaMm2),
    },
    {
      key: 'peak',
      title: 'Peak',
      unit: force.unit,
      sort: 'peakN',
      numeric: true,
      width: '7%',
      cell: (row) =>
        row.breakInForce === null ? (
          row.typedResultInForce === null ? (
            ''
          ) : (
            force.number(row.typedResultInForce.peakN)
          )
        ) : (
          <>
            <OverruledMark overruled={row.breakInForce.overruled} /> {force.number(row.breakInForce.peakN)}
          </>
        ),
    },
    {
      key: 'strength',
      title: 'Strength',
      unit: strength.unit,
      sort: 'strengthMPa',
      numeric: true,
      width: '10%',
      cell: (row) => (resultOf(row) === null ? '' : strength.number(resultOf(row)!.strengthMPa)),
    },
    {
      key: 'wood',
      title: 'Wood f.',
      unit: '%',
      sort: 'woodFailurePercent',
      numeric: true,
      width: '8%',
      cell: (row) => (resultOf(row) === null ? '' : (resultOf(row)!.woodFailurePercent ?? '–')),
    },
    {
      key: 'state',
      title: 'Status',
      width: '13%',
      cell: (row) =>
        row.breakInForce === null ? (
          <WithoutBreak row={row} force={force} />
        ) : (
          <span title={flagListWords(row.breakInForce)}>{stateWords(row.breakInForce)}</span>
        ),
    },
  ]
}
