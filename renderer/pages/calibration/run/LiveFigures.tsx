import type { RoutineState } from '#contract/calibration/calibrationRoutine.ts'
import { positionAtHand } from '#domain/calibration/routinePlace.ts'
import { readingText } from '#words/calibration/readingText.ts'
import { signedNumber } from '#words/units/numbers.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { ReadingFigures } from './ReadingFigures.tsx'
import { ReadingsSoFar } from './ReadingsSoFar.tsx'
import { SteadyBar } from './SteadyBar.tsx'
import './liveFigures.css'

/** The live reading, how steady it is, and what its average says so far. */
export function LiveFigures({ state }: { state: RoutineState }) {
  const { force } = useQuantities()
  const { live, phase, readings } = state
  const unit = state.readingUnit ?? 'counts'
  const taking = phase === 'waiting-for-steady' || phase === 'averaging'
  const taken = readings.at(-1) ?? null
  const shown = taking ? live : taken === null ? null : { mean: taken.mean, sd: taken.sd, count: taken.count }
  const residualN = taking ? live.residualN : (taken?.residualN ?? null)
  const forceN = taking ? (positionAtHand(state)?.forceN ?? 0) : (taken?.forceN ?? 0)
  return (
    <>
      <div className="live">
        <p className="live-numeral" data-testid="reading">
          {live.latest === null ? '–' : readingText(live.latest, unit)}
        </p>
        <div className="live-caption">
          <p className="live-unit">{unit}</p>
          <p>reading now</p>
        </div>
        <div className="live-steady" data-steady={phase === 'averaging' ? '' : undefined}>
          <p className="live-steady-word">{steadyTitle(state)}</p>
          <SteadyBar
            label={phase === 'holding' ? 'Holding' : 'Averaging'}
            share={phase === 'averaging' || phase === 'holding' ? live.averagedShare : 0}
          />
          <p className="live-steady-words">{steadyWords(state)}</p>
        </div>
      </div>
      <ReadingFigures
        figures={[
          { name: taking ? 'Mean' : 'Last mean', value: shown?.mean == null ? '–' : readingText(shown.mean, unit, 1) },
          { name: 'SD', value: shown?.sd == null ? '–' : readingText(shown.sd, unit, 1) },
          { name: 'Samples', value: shown === null || shown.count === 0 ? '–' : String(shown.count) },
          {
            name: taking ? 'Residual now' : 'Its residual',
            value:
              residualN === null
                ? '–'
                : `${signedNumber(residualN * force.factor, 2)}\u00a0${force.unit}${forceN > 0 ? `, ${signedNumber((residualN / forceN) * 100, 2)}\u00a0%` : ''}`,
          },
        ]}
      />
      <ReadingsSoFar state={state} />
    </>
  )
}

function steadyTitle({ phase, live }: RoutineState): string {
  if (phase === 'averaging') return 'Steady'
  if (phase === 'waiting-for-steady') return live.unsteadyBecause === null ? 'Checking' : 'Not steady yet'
  if (phase === 'holding') return 'Holding'
  return 'Ready to read'
}

function steadyWords({ phase, live, plan }: RoutineState): string {
  if (phase === 'averaging') return `averaging ${plan?.averageS ?? 2} s, ${Math.round(live.averagedShare * 100)} % done`
  if (phase === 'waiting-for-steady')
    return `waiting ${live.waitedS.toFixed(0)} of at most ${plan?.steadyWithinS ?? 60} s`
  if (phase === 'holding')
    return `creep over ${plan?.creepHoldS ?? 0} s, ${Math.round(live.averagedShare * 100)} % done`
  return 'Press Enter when the load hangs still.'
}
