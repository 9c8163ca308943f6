import { useState } from 'react'
import type { BreakSummary } from '#contract/breaks/break.ts'
import type { SpecimenFields } from '#contract/specimens/specimen.ts'
import type { SpecimenRecord } from '#contract/specimens/specimenRecord.ts'
import { overruledWords, setAsideWords } from '#words/breaks/decisionWords.ts'
import { flagNames } from '#words/breaks/flagWords.ts'
import { outcomeWord } from '#words/breaks/outcomeWords.ts'
import { isUncalibrated } from '#words/calibration/scaleWords.ts'
import { isSimulated, simulatedMark } from '#words/keeping/demoWords.ts'
import { unreadableTrouble } from '#words/keeping/unreadableWords.ts'
import { severalResultsWords } from '#words/specimens/resultsWords.ts'
import { specimenWords } from '#words/specimens/specimenWords.ts'
import { calendarDayWords } from '#words/units/calendarDays.ts'
import { percentText } from '#words/units/numbers.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { instantWords } from '#words/units/times.ts'
import { useBench } from '../../host/hostContext.ts'
import { useAction } from '../../host/useAction.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { StillCurve } from '../../parts/curve/StillCurve.tsx'
import { OverruledMark } from '../../parts/decisions/OverruledMark.tsx'
import { hashOf, mostCompared } from '../../routes/route.ts'
import { Notice } from '../../widgets/Notice.tsx'
import { AgainDialog } from './AgainDialog.tsx'
import { CorrectionDialog } from './CorrectionDialog.tsx'
import { PlaceInStudy } from './PlaceInStudy.tsx'
import { SpecimenPictures } from './SpecimenPictures.tsx'
import { changedFields, fieldNames } from './specimenChanges.ts'
import { TypedResults } from './TypedResults.tsx'
import { WithdrawButton } from './WithdrawButton.tsx'
import './specimens.css'

/** One specimen: what is known of it, every version of that, its breaks and their load curves. */
export function SpecimenPage({ specimenId }: { specimenId: number }) {
  const answer = useAnswer('specimens.get', { specimenId })
  if (answer.value === null)
    return (
      <div className="record-page">
        <Notice trouble={answer.error} />
      </div>
    )
  return <SpecimenView record={answer.value} />
}

function SpecimenView({ record }: { record: SpecimenRecord }) {
  const { current, revisions, breaks, glued } = record
  const [correcting, setCorrecting] = useState(false)
  return (
    <div className="record-page">
      <SpecimenHead current={current} breaks={breaks} glued={glued} onCorrect={() => setCorrecting(true)} />
      <Notice trouble={unreadableTrouble(record.unreadable)} />
      <div className="record-columns">
        <section className="record-facts" aria-labelledby="facts-title">
          <h2 id="facts-title">Details</h2>
          <FieldList fields={current.fields} />
          <h2>Versions</h2>
          <VersionList revisions={revisions} />
        </section>
        <section className="record-breaks" aria-labelledby="breaks-title">
          <BreakLines
            current={current}
            breaks={breaks}
            complete={record.unreadable === undefined && record.typedResults.length === 0}
          />
          {breaks.toReversed().map(({ breakId }) => (
            <StillCurve breakId={breakId} key={breakId} />
          ))}
          <TypedResults record={record} />
          <SpecimenPictures specimenId={current.specimenId} breaks={breaks} />
        </section>
      </div>
      {correcting && revisions.length > 0 ? (
        <CorrectionDialog specimen={revisions.at(-1)!} onClose={() => setCorrecting(false)} />
      ) : null}
    </div>
  )
}

type Part = Pick<SpecimenRecord, 'current' | 'breaks' | 'revisions' | 'glued'>

/** What the specimen is, and putting it on the bench. */
function SpecimenHead({
  current,
  breaks,
  glued,
  onCorrect,
}: Pick<Part, 'current' | 'breaks' | 'glued'> & { onCorrect(): void }) {
  const bench = useBench()
  const take = useAction('bench.takeSpecimen')
  const [asking, setAsking] = useState(false)
  const several = severalResultsWords(current.results)
  const atHand = bench.specimen?.specimenId === current.specimenId
  return (
    <>
      <header className="record-head">
        <div>
          <p className="crumb">
            <a href={hashOf({ page: 'specimens' })}>Specimens</a>
          </p>
          <h1>{current.fields.number}</h1>
          <p className="record-words">
            {specimenWords(current.fields)}
            {isSimulated(current.fields) ? ` · ${simulatedMark}` : ''}
          </p>
          {glued === null ? null : (
            <PlaceInStudy glued={glued} waits={current.timesBroken === 0 && current.withdrawn === null} />
          )}
        </div>
        <div className="record-buttons">
          {atHand ? (
            <p className="quiet">on the bench now</p>
          ) : (
            <button
              type="button"
              className="button"
              aria-disabled={bench.phase === 'loading'}
              onClick={() =>
                current.timesBroken > 0 ? setAsking(true) : void take.run({ specimenId: current.specimenId })
              }
            >
              Put on the bench
            </button>
          )}
          {current.timesBroken > 0 ? null : (
            <WithdrawButton specimenId={current.specimenId} isWithdrawn={current.withdrawn !== null} />
          )}
          <button type="button" className="button" onClick={onCorrect}>
            Correct
          </button>
        </div>
      </header>
      <Notice trouble={take.error} onDismiss={take.dismiss} />
      {current.withdrawn === null ? null : (
        <p className="running-words">
          <strong>Withdrawn</strong>: {current.withdrawn}
        </p>
      )}
      {several === null ? null : (
        <p className="running-words" role="status">
          <strong>{several}</strong>
        </p>
      )}
      {asking ? (
        <AgainDialog
          current={current}
          last={breaks.findLast(({ outcome }) => outcome === 'break') ?? null}
          onAgain={() => {
            setAsking(false)
            void take.run({ specimenId: current.specimenId, again: true })
          }}
          onClose={() => setAsking(false)}
        />
      ) : null}
    </>
  )
}

/** Every version of what is known, newest first: who changed what, and why. */
function VersionList({ revisions }: Pick<Part, 'revisions'>) {
  return (
    <ol className="history">
      {revisions.toReversed().map((revision) => {
        const before = revisions.find(({ revision: number }) => number === revision.revision - 1)
        return (
          <li key={revision.revision}>
            <p>
              <strong>{before === undefined ? 'Entered' : 'Corrected'}</strong> {instantWords(revision.recordedAt)}
              {revision.by === '' ? '' : ` by ${revision.by}`}
            </p>
            {before === undefined ? null : (
              <p className="quiet">
                {changedFields(before, revision)
                  .map((key) => fieldNames[key])
                  .join(', ') || 'nothing changed'}
                : {revision.reason}
              </p>
            )}
          </li>
        )
      })}
    </ol>
  )
}

/** Its breaks, newest first, and comparing them. */
function BreakLines({ current, breaks, complete }: Pick<Part, 'current' | 'breaks'> & { complete: boolean }) {
  return (
    <>
      <div className="section-head">
        <h2 id="breaks-title">Breaks</h2>
        {breaks.length > 1 ? (
          <a href={hashOf({ page: 'compare', breakIds: breaks.map(({ breakId }) => breakId).slice(0, mostCompared) })}>
            Compare its {breaks.length} breaks
          </a>
        ) : null}
      </div>
      {breaks.length === 0 ? (
        complete ? (
          <p className="empty-words">It has not been loaded yet.</p>
        ) : null
      ) : (
        <ol className="break-lines">
          {breaks.toReversed().map((summary) => (
            <BreakLine
              key={summary.breakId}
              summary={summary}
              inForce={summary.breakId === current.breakInForce?.breakId}
            />
          ))}
        </ol>
      )}
    </>
  )
}

function BreakLine({ summary, inForce }: { summary: BreakSummary; inForce: boolean }) {
  const { force, strength } = useQuantities()
  return (
    <li>
      <a href={hashOf({ page: 'break', breakId: summary.breakId })}>{instantWords(summary.startedAt)}</a>
      <span>{outcomeWord(summary)}</span>
      <span className="numeric">
        <OverruledMark overruled={summary.overruled} /> {force.text(summary.peakN)}
      </span>
      <span className="numeric">{strength.text(summary.strengthMPa)}</span>
      <span className="numeric">
        {summary.woodFailurePercent === null
          ? 'faces not assessed'
          : `wood failure ${percentText(summary.woodFailurePercent)}`}
      </span>
      <span className="break-line-tags">
        {inForce ? <strong className="tag">in force</strong> : null}{' '}
        {summary.resultsOfSpecimen > 1 ? <span className="tag">{summary.resultsOfSpecimen} results</span> : null}{' '}
        {summary.overruled === null ? null : <span className="tag">{flagNames[summary.overruled.kind]}</span>}{' '}
        {isUncalibrated(summary.scaleKind) ? <span className="tag">uncalibrated</span> : null}{' '}
        {isSimulated(summary) ? <span className="tag">{simulatedMark}</span> : null}
      </span>
      {summary.setAside === null ? null : (
        <span className="break-line-why">Set aside, not used in results: {setAsideWords(summary)}</span>
      )}
      {summary.overruled === null ? null : (
        <span className="break-line-why">
          {overruledWords(summary.overruled)} (found: {force.text(summary.overruled.foundPeakN)})
        </span>
      )}
    </li>
  )
}

function FieldList({ fields }: { fields: SpecimenFields }) {
  const quantities = useQuantities()
  const keys = (Object.keys(fieldNames) as (keyof SpecimenFields)[]).filter((key) => key !== 'demo' && key !== 'number')
  return (
    <dl className="facts">
      {keys.map((key) => (
        <div key={key}>
          <dt>{fieldNames[key]}</dt>
          <dd>{fieldWords(fields, key, quantities)}</dd>
        </div>
      ))}
    </dl>
  )
}

function fieldWords(fields: SpecimenFields, key: keyof SpecimenFields, { length, area }: Quantities): string {
  if (key === 'areaMm2') return area.text(fields.areaMm2)
  if (key === 'bondLineGapMm' && fields.bondLineGapMm === 0) return 'tight'
  if (key === 'bondLineGapMm' || key === 'overlapLengthMm' || key === 'overlapWidthMm') return length.text(fields[key])
  const value = fields[key]
  if (key === 'gluedOn' && fields.gluedOn !== null) return calendarDayWords(fields.gluedOn)
  return value === null || value === '' ? '–' : String(value)
}
