import { useState } from 'react'
import type { ImportFate } from '#contract/specimens/importedResult.ts'
import type { ImportAnswer } from '#contract/specimens/importProcedures.ts'
import { fateSentence, fateWords, outcomeWords, someFatesListed } from '#words/specimens/import/outcomeWords.ts'
import { go } from '../../../parts/routing/useRoute.ts'
import { Choice } from '../../../widgets/Choice.tsx'
import { type Column, LongTable } from '../../../widgets/tables/LongTable.tsx'

type Shown = 'all' | 'remarked' | ImportFate['fate']

const shownNames: Readonly<Record<Shown, string>> = {
  all: 'All',
  new: 'New',
  remarked: 'New, with a remark',
  'already-there': 'There already',
  rejected: 'Rejected',
}

/** What became of every block of a table, or would become of it, each in a sentence. */
export function Outcome({ answer: { summary, fates } }: { answer: ImportAnswer }) {
  const [shown, setShown] = useState<Shown>(summary.rejected > 0 ? 'rejected' : 'all')
  const isShown = ({ fate, reason }: ImportFate, which: Shown) =>
    which === 'all' || (which === 'remarked' ? fate === 'new' && reason !== null : fate === which)
  const rows = fates.filter((fate) => isShown(fate, shown))
  const hasRemarks = fates.some((fate) => isShown(fate, 'remarked'))
  const blocks = summary.new + summary.alreadyThere + summary.rejected
  return (
    <section className="import-outcome" aria-labelledby="outcome-title">
      <h2 id="outcome-title">{summary.dryRun ? 'What would become of each row' : 'What became of each row'}</h2>
      <p role="status">
        <strong>{outcomeWords(summary)}</strong>
      </p>
      {fates.length < blocks ? <p className="quiet">{someFatesListed(fates.length, blocks)}</p> : null}
      <Choice<Shown>
        label="Rows shown"
        labelHidden
        options={(Object.keys(shownNames) as Shown[])
          .filter((value) => value !== 'remarked' || hasRemarks)
          .map((value) => ({ value, label: shownNames[value] }))}
        value={shown}
        onChange={setShown}
      />
      <div className="import-fates">
        <LongTable<ImportFate, 'row'>
          label="Fates"
          listKey={`${summary.fileSha256} ${summary.dryRun} ${shown}`}
          columns={columnsFor(summary.dryRun)}
          total={rows.length}
          rowAt={(index) => rows[index]}
          onSight={() => {}}
          sort="row"
          descending={false}
          onSort={() => {}}
          onOpen={({ specimenId }) => {
            if (specimenId !== null) go({ page: 'specimen', specimenId })
          }}
          rowLabel={({ row, fate }) => `Row ${row}, ${fateWords(fate)}`}
          empty="No row of this kind."
        />
      </div>
    </section>
  )
}

function columnsFor(dryRun: boolean): Column<ImportFate, 'row'>[] {
  return [
    { key: 'row', title: 'Row', numeric: true, width: '7%', cell: ({ row }) => row },
    { key: 'fate', title: 'Fate', width: '11%', cell: ({ fate }) => <strong>{fateWords(fate)}</strong> },
    {
      key: 'reason',
      title: 'In words',
      width: '56%',
      cell: (fate) => {
        const sentence = fateSentence(fate, dryRun)
        return <span title={sentence}>{sentence}</span>
      },
    },
    { key: 'number', title: 'Number', width: '14%', cell: ({ number }) => number ?? '' },
    { key: 'column', title: 'Column', width: '12%', cell: ({ column }) => column ?? '' },
  ]
}
