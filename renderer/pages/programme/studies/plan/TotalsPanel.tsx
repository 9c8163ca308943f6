import type { StudyFields } from '#contract/programme/study.ts'
import { studyDoubts } from '#domain/programme/study/studyDoubts.ts'
import { studyTotals } from '#domain/programme/study/totals.ts'
import { doubtWords } from '#words/programme/study/doubtWords.ts'
import { gramsWords, litresWords, woodWords } from '#words/programme/study/totalsWords.ts'
import { countOf } from '#words/units/counts.ts'
import { writeCount } from '#words/units/numbers.ts'

/** How much of everything a plan needs, and what a careful person would ask about it. */
export function TotalsPanel({ plan }: { plan: StudyFields | null }) {
  if (plan === null)
    return (
      <section className="study-panel" aria-labelledby="totals-title">
        <h2 id="totals-title">What it needs</h2>
        <p className="quiet">Name an adhesive and an age, and what the study needs stands here.</p>
      </section>
    )
  const totals = studyTotals(plan)
  const wood = woodWords(totals)
  const doubts = studyDoubts(plan)
  const named = totals.exposures.filter(({ name }) => name !== '')
  return (
    <section className="study-panel" aria-labelledby="totals-title">
      <h2 id="totals-title">What it needs</h2>
      <p className="study-total" aria-live="polite">
        <strong>{countOf(totals.blocks, 'block')}</strong>: {countOf(totals.cells, 'cell')} of {plan.blocksPerCell}
        {totals.spares === 0 ? '' : `, and ${countOf(totals.spares, 'spare')}`}
      </p>
      <dl className="facts">
        {totals.grams === null ? null : (
          <div>
            <dt>Adhesive</dt>
            <dd>
              {gramsWords(totals.grams)}
              {totals.adhesives.length < 2
                ? ''
                : `: ${totals.adhesives.map(({ name, grams }) => `${name} ${gramsWords(grams ?? 0)}`).join(', ')}`}
            </dd>
          </div>
        )}
        {wood === null ? null : (
          <div>
            <dt>Wood</dt>
            <dd>{wood}</dd>
          </div>
        )}
        {totals.boardsGive === null ? null : (
          <div>
            <dt>Boards</dt>
            <dd>
              {countOf(plan.boards.length, 'board')} that give {countOf(totals.boardsGive, 'block')}
            </dd>
          </div>
        )}
        <div>
          <dt>Shelf</dt>
          <dd>
            {named.length < 2
              ? countOf(named[0]?.blocks ?? totals.exposures[0]?.blocks ?? 0, 'block')
              : named.map(({ name, blocks }) => `${name} ${writeCount(blocks)}`).join(', ')}
            {totals.shelfMm3 === null ? '' : `, ${litresWords(totals.shelfMm3)} in all`}
          </dd>
        </div>
      </dl>
      {doubts.length === 0 ? null : (
        <ul className="study-doubts" aria-label="To think about">
          {doubts.map((doubt) => (
            <li key={doubt.kind}>{doubtWords(doubt)}</li>
          ))}
        </ul>
      )}
    </section>
  )
}
