import type { BenchState } from '#contract/bench/bench.ts'
import type { CalibrationSummary } from '#contract/calibration/calibrationRecords.ts'
import { dueWords } from '#words/calibration/dueWords.ts'
import { rangeText } from '#words/calibration/rangeWords.ts'
import { uncalibratedWords } from '#words/calibration/scaleWords.ts'
import { uncertaintyText } from '#words/calibration/uncertaintyWords.ts'
import { unusedWords } from '#words/calibration/unusedWords.ts'
import { simulatedMark } from '#words/keeping/demoWords.ts'
import type { Quantity } from '#words/units/quantities.ts'
import { dayWords } from '#words/units/times.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { hashOf } from '../../../routes/route.ts'

/** The calibration that the next break is found with, or that there is none. */
export function InForce({ bench, summary }: { bench: BenchState; summary: CalibrationSummary | null }) {
  const { force, forcePerCount } = useQuantities()
  const { calibration } = bench
  if (calibration === null && bench.calibrationUnused !== null)
    return (
      <section className="in-force" aria-label="In force" data-none="">
        <p className="in-force-name">{bench.connection.status === 'closed' ? 'In force' : 'Uncalibrated'}</p>
        <p className="prose">
          {unusedWords(bench.calibrationUnused)} {nowWords(bench, forcePerCount)}
        </p>
      </section>
    )
  if (calibration === null)
    return (
      <section className="in-force" aria-label="In force" data-none="">
        <p className="in-force-name">Uncalibrated</p>
        <p className="prose">
          {nowWords(bench, forcePerCount) || 'Not connected to an amplifier.'} Every force is marked uncalibrated.
        </p>
      </section>
    )
  return (
    <section className="in-force" aria-label="In force">
      <div className="in-force-title">
        <p className="in-force-caption">In force</p>
        <p className="in-force-name">
          <a href={hashOf({ page: 'calibration-record', calibrationId: calibration.calibrationId })}>
            {calibration.name}
          </a>{' '}
          {summary?.device === 'virtual' ? <strong className="tag">{simulatedMark}</strong> : null}
        </p>
        <p className="record-words">
          {summary === null ? '' : `${dayWords(summary.madeAt)}${summary.by === '' ? '' : `, ${summary.by}`} · `}
          {summary?.source ?? bench.connection.label}
        </p>
      </div>
      <dl className="in-force-figures">
        <div>
          <dt>Class</dt>
          <dd>{summary === null ? '–' : summary.class}</dd>
        </div>
        <div>
          <dt>Verified range</dt>
          <dd>{rangeText(calibration.verifiedRangeN, force)}</dd>
        </div>
        <div>
          <dt>Uncertainty, k = 2</dt>
          <dd>{uncertaintyText(summary?.expandedUncertaintyPercent ?? null)}</dd>
        </div>
        <div data-overdue={calibration.overdue ? '' : undefined}>
          <dt>Recalibration due</dt>
          <dd>{dueWords(calibration.dueOn)}</dd>
          {calibration.overdue ? <dd className="figure-words">overdue: calibrate before the next series</dd> : null}
        </div>
      </dl>
    </section>
  )
}

/** What a force rests on now, without a calibration; '' where nothing is connected. */
function nowWords({ connection, scale }: BenchState, forcePerCount: Quantity): string {
  if (connection.status === 'closed' || scale.kind === 'calibration') return ''
  return `Now: ${uncalibratedWords(scale, forcePerCount)}.`
}
