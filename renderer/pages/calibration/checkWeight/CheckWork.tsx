import type { CheckState } from '#contract/calibration/checkWeight.ts'
import { weightsFall } from '#words/bench/cautions.ts'
import { checkOrder } from '#words/calibration/routine/checkOrder.ts'
import { loadText, stackWords } from '#words/calibration/weightWords.ts'
import { writeFixed } from '#words/units/numbers.ts'
import { useBench } from '../../../host/hostContext.ts'
import { useAction } from '../../../host/useAction.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { useSingleKeys } from '../../../parts/routing/singleKeys.ts'
import { Keys } from '../../../widgets/Keys.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { OrderLine } from '../run/OrderLine.tsx'
import { ReadingFigures } from '../run/ReadingFigures.tsx'
import { RoutineShape } from '../run/RoutineShape.tsx'
import { SteadyBar } from '../run/SteadyBar.tsx'
import { OutsideRange } from './OutsideRange.tsx'

/** The check as it goes: zero, then the weight. */
export function CheckWork({ state }: { state: CheckState }) {
  const bench = useBench()
  const { force } = useQuantities()
  const goOn = useAction('checkWeight.goOn')
  const stop = useAction('checkWeight.stop')
  const putWeights = useAction('bench.putVirtualWeights')
  const { live, phase } = state
  const reading = phase === 'waiting-for-steady' || phase === 'averaging'
  const order = checkOrder(state)
  const isVirtual = bench.connection.source?.kind === 'virtual'
  const hang = () => void putWeights.run({ forceN: phase === 'load' ? (state.expectedN ?? 0) : 0 })

  useSingleKeys((key) => {
    if (key === 'Enter') {
      if (!reading) void goOn.run({})
    } else if (key === 'Escape') void stop.run({})
    else if (key.toLowerCase() === 'l' && isVirtual) hang()
    else return false
    return true
  })

  return (
    <section className="check-now" aria-label="Check now">
      <OrderLine
        shape={<RoutineShape phase={phase === 'load' ? 'step' : reading ? phase : 'zero'} atZero={phase === 'zero'} />}
        advice={order.advice}
      >
        <h2 className="check-order">
          {order.title}
          {phase === 'load' && state.expectedN !== null ? `: ${loadText(state.expectedN, force)}` : ''}
        </h2>
      </OrderLine>
      <OutsideRange expectedN={state.expectedN} />
      <ReadingFigures
        figures={[
          { name: 'Reading now', value: live.latest === null ? '–' : writeFixed(live.latest, 1) },
          { name: 'Samples', value: live.count === 0 ? '–' : String(live.count) },
          { name: 'Mean', value: live.mean === null ? '–' : writeFixed(live.mean, 1) },
        ]}
      />
      <SteadyBar label="Averaging" share={phase === 'averaging' ? live.averagedShare : 0} />
      <Notice trouble={goOn.error ?? stop.error ?? putWeights.error ?? state.problem} />
      <div className="check-buttons">
        {reading ? null : (
          <button
            type="button"
            className="button button-primary button-large"
            aria-disabled={goOn.pending}
            onClick={() => void goOn.run({})}
          >
            {phase === 'zero' ? 'Read the zero' : 'Read the weight'} <Keys keys="Enter" />
          </button>
        )}
        {isVirtual && !reading ? (
          <button type="button" className="button" onClick={hang}>
            {phase === 'load'
              ? `Hang ${stackWords(state.weights)} on the virtual cell`
              : 'Take the virtual weights off'}{' '}
            <Keys keys="L" />
          </button>
        ) : null}
        <button type="button" className="button button-quiet" onClick={() => void stop.run({})}>
          Stop <Keys keys="Esc" />
        </button>
      </div>
      <p className="quiet">{weightsFall}</p>
    </section>
  )
}
