import type { BenchState } from '#contract/bench/bench.ts'
import { lastOfSessionWords, noneWaitingWords, waitingCountWords } from '#words/bench/queueWords.ts'
import { isUncalibrated } from '#words/calibration/scaleWords.ts'
import { brokenAtHandWords } from '#words/specimens/resultsWords.ts'
import { specimenWords } from '#words/specimens/specimenWords.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { hashOf } from '../../../routes/route.ts'
import { Keys } from '../../../widgets/Keys.tsx'
import { useLiveReading } from '../live/useLiveReading.ts'
import { ScannedBlock } from './ScannedBlock.tsx'
import { SessionControls, SessionLine } from './SessionAtHand.tsx'
import './atHand.css'

/** The specimen in the press, its strength as the load rises, and which one comes next. */
export function SpecimenAtHand({ bench, onNext }: { bench: BenchState; onNext(): void }) {
  const { area } = useQuantities()
  const { specimen, next, breaking } = bench
  return (
    <section className="at-hand" data-session={breaking === null ? undefined : ''} aria-labelledby="at-hand-title">
      <div className="at-hand-head">
        <h2 id="at-hand-title">Specimen on the bench</h2>
        {breaking === null ? (
          <a href={hashOf({ page: 'breakings' })}>Breaking sessions</a>
        ) : (
          <SessionLine breaking={breaking} />
        )}
      </div>
      {specimen === null ? (
        <>
          <p className="at-hand-number">None</p>
          <p className="at-hand-words">
            <a href={hashOf({ page: 'specimens' })}>Choose a specimen</a>, or go on without one: the break can be moved
            to a specimen later.
          </p>
        </>
      ) : (
        <>
          <p className="at-hand-number">
            <a href={hashOf({ page: 'specimen', specimenId: specimen.specimenId })}>{specimen.fields.number}</a>
          </p>
          <p className="at-hand-words">{specimenWords(specimen.fields)}</p>
          {specimen.timesBroken > 0 ? <p className="at-hand-broken">{brokenAtHandWords(bench)}</p> : null}
          <dl className="at-hand-figures">
            <div>
              <dt>Bonded area</dt>
              <dd>{specimen.fields.areaMm2 === null ? 'not entered' : area.text(specimen.fields.areaMm2)}</dd>
            </div>
            <LiveStrength bench={bench} areaMm2={specimen.fields.areaMm2} />
          </dl>
        </>
      )}
      <div className="at-hand-next">
        <p>
          {next === null ? (
            breaking === null ? (
              noneWaitingWords
            ) : (
              lastOfSessionWords(bench.waitingSpecimens)
            )
          ) : (
            <>
              Next <strong>{next.fields.number}</strong>
              {breaking === null ? (
                <span className="at-hand-queue">{waitingCountWords(bench.waitingSpecimens)}</span>
              ) : null}
            </>
          )}
        </p>
        <button
          type="button"
          className="button"
          aria-disabled={next === null || bench.phase === 'loading'}
          onClick={onNext}
        >
          Next <Keys keys="N" />
        </button>
      </div>
      {breaking === null ? null : <SessionControls bench={bench} />}
      <ScannedBlock isLoading={bench.phase === 'loading'} />
    </section>
  )
}

function LiveStrength({ bench, areaMm2 }: { bench: BenchState; areaMm2: number | null }) {
  const { strength } = useQuantities()
  const reading = useLiveReading()
  const loading = bench.phase === 'loading'
  const forceN = bench.scale.kind === 'none' || !loading ? null : reading.latest
  const strengthMPa = forceN === null || areaMm2 === null ? null : forceN / areaMm2
  return (
    <div>
      <dt>Stress now{stressDoubt(bench.scale.kind)}</dt>
      <dd>{strengthMPa === null ? '–' : strength.text(strengthMPa)}</dd>
    </div>
  )
}

function stressDoubt(kind: BenchState['scale']['kind']): string {
  if (kind === 'none') return ', no scale'
  return isUncalibrated(kind) ? ', uncalibrated' : ''
}
