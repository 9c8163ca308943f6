import type { BenchState } from '#contract/bench/bench.ts'
import { outcomePeakN } from '#words/bench/outcomePeak.ts'
import { phaseWords } from '#words/bench/phaseWords.ts'
import { isUncalibrated } from '#words/calibration/scaleWords.ts'
import { unusedWords } from '#words/calibration/unusedWords.ts'
import { simulatedMark } from '#words/keeping/demoWords.ts'
import { writeFixed } from '#words/units/numbers.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { PhaseShape } from '../../../parts/bench/PhaseShape.tsx'
import { hashOf } from '../../../routes/route.ts'
import { useLiveReading } from './useLiveReading.ts'
import './readout.css'

/** State and force, to be read from three metres. After a break the highest load stands there until the next one. */
export function Readout({ bench }: { bench: BenchState }) {
  const { force } = useQuantities()
  const reading = useLiveReading()
  const words = phaseWords(bench, (forceN) => force.text(forceN))
  const inCounts = bench.scale.kind === 'none'
  const isOver = bench.phase === 'broke' || bench.phase === 'unloaded'
  const peakN = isOver ? (outcomePeakN(bench) ?? bench.runningPeak) : bench.runningPeak
  const live = bench.phase === 'no-signal' ? null : reading.latest
  const shown = bench.phase === 'broke' ? peakN : live
  const write = (value: number | null) => (value === null ? '–' : writeLive(value, bench, force.factor))
  const besideValue = bench.phase === 'broke' ? live : isOver ? peakN : (reading.peak ?? bench.runningPeak)
  const unit = inCounts ? 'counts' : force.unit
  return (
    <section className="readout" aria-label="Force" data-phase={bench.phase}>
      <div className="readout-state">
        <PhaseShape phase={bench.phase} />
        <div>
          <h1 className="readout-title">{words.title}</h1>
          <p className="readout-advice">{words.advice}</p>
        </div>
      </div>
      <div className="readout-force">
        <p className="readout-numeral" data-testid="force" data-empty={shown === null ? '' : undefined}>
          {write(shown)}
        </p>
        <div className="readout-caption">
          <p className="readout-unit">{unit}</p>
          <p>{bench.phase === 'broke' ? 'highest load' : inCounts ? 'reading now' : 'force now'}</p>
          {isUncalibrated(bench.scale.kind) ? <Uncalibrated bench={bench} /> : <CalibrationName bench={bench} />}{' '}
          {bench.connection.source?.kind === 'virtual' ? <strong className="tag">{simulatedMark}</strong> : null}
        </div>
      </div>
      <dl className="readout-beside">
        <div>
          <dt>{bench.phase === 'broke' ? 'Force now' : isOver ? 'Highest load' : 'Highest so far'}</dt>
          <dd>
            {write(besideValue)} <small>{besideValue === null ? '' : unit}</small>
          </dd>
        </div>
        <CapacityShare bench={bench} live={live} />
      </dl>
      <p className="visually-hidden" aria-live="polite">
        {words.title}
      </p>
    </section>
  )
}

/** That the force rests on no calibration and, where one is in force all the same, why not on that. */
function Uncalibrated({ bench: { connection, scale, calibrationUnused } }: { bench: BenchState }) {
  if (connection.status === 'closed') return null
  const words = calibrationUnused === null ? null : unusedWords(calibrationUnused)
  return (
    <p className="readout-calibration">
      <strong className="tag">{scale.kind === 'none' ? 'no scale' : 'uncalibrated'}</strong>
      {words === null ? null : (
        <a href={hashOf({ page: 'calibration' })} title={words}>
          why<span className="visually-hidden">: {words}</span>
        </a>
      )}
    </p>
  )
}

/** Which calibration the force is found with, and whether it is due again. */
function CalibrationName({ bench: { calibration } }: { bench: BenchState }) {
  if (calibration === null) return null
  return (
    <p className="readout-calibration">
      <a href={hashOf({ page: 'calibration-record', calibrationId: calibration.calibrationId })}>{calibration.name}</a>
      {calibration.overdue ? <strong className="tag">recalibration due</strong> : null}
    </p>
  )
}

/** How much of the rated load is on, as a number and as a bar with its marks at 90 and 100 %. */
function CapacityShare({ bench, live }: { bench: BenchState; live: number | null }) {
  if (bench.capacityN === null || bench.scale.kind === 'none')
    return (
      <div>
        <dt>Of rated load</dt>
        <dd className="readout-unknown">
          <a href="#/settings">not entered</a>
        </dd>
      </div>
    )
  const share = live === null ? null : Math.max(live / bench.capacityN, 0)
  return (
    <div>
      <dt>Of rated load</dt>
      <dd>
        {share === null ? '–' : Math.round(share * 100)} <small>%</small>
        <span className="gauge" aria-hidden="true">
          <span className="gauge-fill" style={{ width: `${Math.min((share ?? 0) / 1.1, 1) * 100}%` }} />
          <span className="gauge-mark gauge-warning" />
          <span className="gauge-mark gauge-alarm" />
        </span>
      </dd>
    </div>
  )
}

/** A live force with steady decimals, so that the digits do not dance: one below a capacity of 1 kN, else none. */
function writeLive(value: number, bench: BenchState, factor: number): string {
  if (bench.scale.kind === 'none') return writeFixed(value, 0)
  const fine = bench.capacityN !== null && bench.capacityN * factor <= 1000
  return writeFixed(value * factor, fine ? 1 : 0)
}
