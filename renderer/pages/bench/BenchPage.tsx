import { useRef } from 'react'
import type { TroubleMessage } from '#contract/errors.ts'
import { isStoring } from '#words/bench/outcomePeak.ts'
import { tareHindrance } from '#words/bench/phaseWords.ts'
import { tareWarningWords } from '#words/bench/tareWarningWords.ts'
import { zeroMovedWords } from '#words/bench/zeroMovedWords.ts'
import { demoOverWords } from '#words/keeping/demoWords.ts'
import { useBench, usePreferences } from '../../host/hostContext.ts'
import { useAction } from '../../host/useAction.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { DueLine } from '../../parts/programme/DueLine.tsx'
import { useSingleKeys } from '../../parts/routing/singleKeys.ts'
import { hashOf } from '../../routes/route.ts'
import { Keys } from '../../widgets/Keys.tsx'
import { Notice } from '../../widgets/Notice.tsx'
import { SpecimenAtHand } from './atHand/SpecimenAtHand.tsx'
import { BenchControls } from './BenchControls.tsx'
import { LastBreak, type LastBreakKeys } from './lastBreak/LastBreak.tsx'
import { LiveCurve } from './live/LiveCurve.tsx'
import { Readout } from './live/Readout.tsx'
import './bench.css'

/** The screen at the press: state, force, curve, the specimen at hand and the break that just happened. */
export function BenchPage() {
  const bench = useBench()
  const { handsFree } = usePreferences()
  const { force } = useQuantities()
  const tare = useAction('bench.tare')
  const arm = useAction('bench.arm')
  const next = useAction('bench.nextSpecimen')
  const load = useAction('bench.loadVirtual')
  const setPreferences = useAction('preferences.set')
  const lastBreakKeys = useRef<LastBreakKeys>(null)

  const isVirtual = bench.connection.source?.kind === 'virtual' && bench.connection.status === 'open'
  // The demo ends with its last whole block; one that is put in again is loaded all the same.
  const isOver = isVirtual && bench.waitingSpecimens === 0 && !bench.again
  const isReady = bench.busyWith === null && ['waiting', 'broke', 'unloaded'].includes(bench.phase)
  const canLoad = isVirtual && !isOver && isReady

  useSingleKeys((key) => {
    const name = key.toLowerCase()
    if (name === 't') {
      if (tareHindrance(bench) === null) void tare.run({})
    } else if (name === 'a') void arm.run({ armed: !bench.armed })
    else if (name === 'n') {
      if (bench.next !== null && bench.phase !== 'loading') void next.run({})
    } else if (name === 'l' && isVirtual) {
      if (canLoad) void load.run({})
    } else return lastBreakKeys.current?.key(key) ?? false
    return true
  })

  const { problem, status } = bench.connection
  const trouble: TroubleMessage | null =
    bench.storageProblem ??
    (status === 'open' ? null : problem) ??
    tare.error ??
    arm.error ??
    next.error ??
    load.error ??
    setPreferences.error ??
    problem
  return (
    <div className="bench">
      <div className="bench-main">
        <Readout bench={bench} />
        <Notice trouble={trouble}>
          {problem === null ? null : <a href={hashOf({ page: 'connect' })}>Choose the amplifier</a>}
        </Notice>
        {bench.busyWith === null ? null : (
          <p className="running-words">
            <a href={hashOf({ page: bench.busyWith === 'calibration' ? 'calibration-run' : 'check-weight' })}>
              Go on with the {bench.busyWith === 'calibration' ? 'calibration' : 'check weight'}
            </a>
          </p>
        )}
        <DueLine />
        <LiveCurve bench={bench} />
        {bench.tareWarning === null ? null : (
          <p className="tare-warning" role="status">
            {tareWarningWords(bench.tareWarning, force)}
          </p>
        )}
        {bench.zeroMoved === null ? null : (
          <p className="tare-warning" role="status">
            {zeroMovedWords(bench.zeroMoved, force)}
          </p>
        )}
        <BenchControls
          bench={bench}
          handsFree={handsFree}
          tarePending={tare.pending}
          onTare={() => void tare.run({})}
          onArm={(armed) => void arm.run({ armed })}
          onHandsFree={(on) => void setPreferences.run({ handsFree: on })}
        />
      </div>
      <aside className="bench-side" aria-label="Specimen and last break">
        <SpecimenAtHand bench={bench} onNext={() => void next.run({})} />
        {isVirtual ? (
          <section className="virtual" aria-label="Virtual amplifier">
            <button
              type="button"
              className="button button-primary button-large"
              aria-disabled={!canLoad}
              onClick={() => canLoad && void load.run({})}
            >
              {bench.phase === 'loading' ? 'Loading …' : 'Load the specimen'} <Keys keys="L" />
            </button>
            {isOver ? <p>{demoOverWords}</p> : null}
          </section>
        ) : null}
        {bench.lastBreak === null ? (
          <FirstBreakWords connected={bench.connection.status === 'open'} />
        ) : (
          <LastBreak newest={bench.lastBreak} isStoring={isStoring(bench)} keys={lastBreakKeys} />
        )}
      </aside>
    </div>
  )
}

function FirstBreakWords({ connected }: { connected: boolean }) {
  return (
    <section className="last-break last-break-empty" aria-labelledby="no-break-title">
      <h2 id="no-break-title">Last break</h2>
      <p className="last-break-words">
        {connected
          ? 'No break yet. When a joint breaks, its peak load and strength show here, with a place to describe the broken faces.'
          : 'Connect an amplifier first; each break then shows here.'}
      </p>
      {connected ? null : (
        <a className="button button-primary" href={hashOf({ page: 'connect' })}>
          Connect
        </a>
      )}
      <ol className="cautions-short">
        <li>Guard closed</li>
        <li>Eye protection on</li>
        <li>Hands clear of the press</li>
        <li>Never above the rated load</li>
      </ol>
    </section>
  )
}
