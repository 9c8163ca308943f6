import { useState } from 'react'
import type { RoutineState } from '#contract/calibration/calibrationRoutine.ts'
import { neverAboveWords, weightsFall } from '#words/bench/cautions.ts'
import { orderOf, placeWords } from '#words/calibration/routine/routineWords.ts'
import { loadText } from '#words/calibration/weightWords.ts'
import { useBench } from '../../../host/hostContext.ts'
import { useAction } from '../../../host/useAction.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { useSingleKeys } from '../../../parts/routing/singleKeys.ts'
import { Keys } from '../../../widgets/Keys.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { PositionList } from '../plan/PositionList.tsx'
import { VirtualWeights } from '../plan/VirtualWeights.tsx'
import { BreakOffDialog } from './BreakOffDialog.tsx'
import { LiveFigures } from './LiveFigures.tsx'
import { OrderLine } from './OrderLine.tsx'
import { RoutineShape } from './RoutineShape.tsx'
import { type RoutineSteps, useRoutineSteps } from './useRoutineSteps.ts'
import { useVirtualWeights } from './useVirtualWeights.ts'
import './work.css'

/** Hanging the weights, step by step: what to do now in large type, the live reading, and where one stands. */
export function WorkView({ state }: { state: RoutineState }) {
  const bench = useBench()
  const { force } = useQuantities()
  const steps = useRoutineSteps(state)
  const virtual = useVirtualWeights(state)
  const invert = useAction('calibration.acceptInverted')
  const [breakingOff, setBreakingOff] = useState(false)
  const order = orderOf(state)
  const isVirtual = bench.connection.source?.kind === 'virtual'
  const { askedN } = virtual

  useSingleKeys((key) => {
    const name = key.toLowerCase()
    if (name === 'b') setBreakingOff(true)
    else if (name === 'l' && isVirtual) virtual.hangAsked()
    else return steps.key(key)
    return true
  })

  return (
    <div className="work">
      <div className="work-main">
        <section className="order" aria-label="What to do now" data-phase={state.phase}>
          <p className="order-place">{placeWords(state)}</p>
          <OrderLine shape={<RoutineShape phase={state.phase} atZero={askedN === 0} />} advice={order.advice}>
            <h1>
              {order.title}
              {order.loadN === null || order.loadN === 0 ? null : (
                <>
                  : <span className="order-force">{loadText(order.loadN, force)}</span>
                </>
              )}
            </h1>
          </OrderLine>
        </section>
        <Notice trouble={steps.error ?? invert.error ?? virtual.error ?? state.problem} />
        {state.reversed && !state.invertedAccepted ? (
          <InvertedNotice
            onBreakOff={() => setBreakingOff(true)}
            onAccept={() => void invert.run({ accepted: true })}
          />
        ) : null}
        <LiveFigures state={state} />
        <WorkButtons state={state} steps={steps} onBreakOff={() => setBreakingOff(true)} />
      </div>
      <aside className="work-side" aria-label="Steps">
        {isVirtual ? (
          <VirtualWeights
            askedN={askedN}
            hungN={virtual.hungN}
            preloading={state.phase === 'preloading'}
            pending={virtual.pending}
            onHang={virtual.hangAsked}
          />
        ) : null}
        <PositionList state={state} onRepeat={steps.reading ? null : steps.repeat} />
        <p className="work-caution">
          {weightsFall} {neverAboveWords(bench.capacityN, force)}
        </p>
      </aside>
      {breakingOff ? <BreakOffDialog onClose={() => setBreakingOff(false)} /> : null}
    </div>
  )
}

/** Says that the cell reads in reverse, and leaves the choice between mending that and turning the sign. */
function InvertedNotice({ onBreakOff, onAccept }: { onBreakOff(): void; onAccept(): void }) {
  return (
    <div className="notice notice-asking" role="alert">
      <div className="notice-words">
        <p className="notice-message">The reading falls while the force rises.</p>
        <p className="notice-hint">
          The cell is wired in reverse, or the weights pull where the press pushes. Either is fine if it is always so:
          the calibration then reverses the sign.
        </p>
      </div>
      <div className="notice-buttons">
        <button type="button" className="button" onClick={onBreakOff}>
          Stop early, check the wiring
        </button>
        <button type="button" className="button button-primary" onClick={onAccept}>
          It is always so: reverse the sign
        </button>
      </div>
    </div>
  )
}

/** The steps of the routine as buttons, each with its key. */
function WorkButtons({ state, steps, onBreakOff }: { state: RoutineState; steps: RoutineSteps; onBreakOff(): void }) {
  const { reading, repeatable } = steps
  return (
    <div className="work-buttons">
      {reading ? (
        <button type="button" className="button button-large" onClick={steps.stop}>
          Stop waiting <Keys keys="Esc" />
        </button>
      ) : (
        <button
          type="button"
          className="button button-primary button-large"
          aria-disabled={steps.pending}
          onClick={steps.goOn}
        >
          {orderOf(state).goOn} <Keys keys="Enter" />
        </button>
      )}
      <button
        type="button"
        className="button"
        aria-disabled={repeatable === null}
        onClick={() => repeatable !== null && steps.repeat(repeatable)}
      >
        Repeat <Keys keys="R" />
      </button>
      <button type="button" className="button" aria-disabled={reading} onClick={steps.skip}>
        {state.phase === 'preloading' ? 'No more preloads' : 'Leave out'} <Keys keys="N" />
      </button>
      <button type="button" className="button" aria-disabled={reading} onClick={steps.back}>
        Back <Keys keys="Bksp" />
      </button>
      <button type="button" className="button button-quiet work-end" onClick={onBreakOff}>
        Stop early <Keys keys="B" />
      </button>
    </div>
  )
}
