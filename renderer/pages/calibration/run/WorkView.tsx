import { useState } from 'react'
import type { RoutineState } from '#contract/calibration/calibrationRoutine.ts'
import { heaviestPosition, lastTaken, positionAtHand } from '#domain/calibration/routinePlace.ts'
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
import './work.css'

/** Hanging the weights, step by step: what to do now in large type, the live reading, and where one stands. */
export function WorkView({ state }: { state: RoutineState }) {
  const bench = useBench()
  const { force } = useQuantities()
  const goOn = useAction('calibration.goOn')
  const stop = useAction('calibration.stopWaiting')
  const repeat = useAction('calibration.repeat')
  const back = useAction('calibration.back')
  const skip = useAction('calibration.skip')
  const invert = useAction('calibration.acceptInverted')
  const putWeights = useAction('bench.putVirtualWeights')
  const [breakingOff, setBreakingOff] = useState(false)
  const [hungN, setHungN] = useState(0)
  const order = orderOf(state)
  const reading = state.phase === 'waiting-for-steady' || state.phase === 'averaging' || state.phase === 'holding'
  const isVirtual = bench.connection.source?.kind === 'virtual'
  const repeatable = reading ? null : lastTaken(state)
  const askedN =
    state.phase === 'preloading' ? (heaviestPosition(state)?.forceN ?? 0) : (positionAtHand(state)?.forceN ?? 0)

  async function hang(forceN: number): Promise<void> {
    if ((await putWeights.run({ forceN })) !== null) setHungN(forceN)
  }
  const hangAsked = () => void hang(state.phase === 'preloading' && hungN > 0 ? 0 : askedN)

  useSingleKeys((key) => {
    const name = key.toLowerCase()
    if (key === 'Enter') {
      if (!reading && !state.reversed) void goOn.run({})
    } else if (key === 'Escape') {
      if (reading) void stop.run({})
    } else if (name === 'r') {
      if (repeatable !== null) void repeat.run({ position: repeatable })
    } else if (name === 'n') {
      if (!reading) void skip.run({})
    } else if (key === 'Backspace') {
      if (!reading) void back.run({})
    } else if (name === 'b') setBreakingOff(true)
    else if (name === 'l' && isVirtual) hangAsked()
    else return false
    return true
  })

  const trouble =
    goOn.error ?? stop.error ?? repeat.error ?? back.error ?? skip.error ?? invert.error ?? putWeights.error
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
        <Notice trouble={trouble ?? state.problem} />
        {state.reversed && !state.invertedAccepted ? (
          <div className="notice" role="alert">
            <div className="notice-words">
              <p className="notice-message">The reading falls while the force rises.</p>
              <p className="notice-hint">
                The cell is wired in reverse, or the weights pull where the press pushes. Either is fine if it is always
                so: the calibration then turns the sign.
              </p>
            </div>
            <button type="button" className="button" onClick={() => setBreakingOff(true)}>
              Break off, check the wiring
            </button>
            <button type="button" className="button button-primary" onClick={() => void invert.run({ accepted: true })}>
              It is so: turn the sign
            </button>
          </div>
        ) : null}
        <LiveFigures state={state} />
        <div className="work-buttons">
          {reading ? (
            <button type="button" className="button button-large" onClick={() => void stop.run({})}>
              Stop waiting <Keys keys="Esc" />
            </button>
          ) : (
            <button
              type="button"
              className="button button-primary button-large"
              disabled={goOn.pending}
              onClick={() => void goOn.run({})}
            >
              {order.goOn} <Keys keys="Enter" />
            </button>
          )}
          <button
            type="button"
            className="button"
            disabled={repeatable === null}
            onClick={() => repeatable !== null && void repeat.run({ position: repeatable })}
          >
            Repeat <Keys keys="R" />
          </button>
          <button type="button" className="button" disabled={reading} onClick={() => void skip.run({})}>
            {state.phase === 'preloading' ? 'No more preloads' : 'Leave out'} <Keys keys="N" />
          </button>
          <button type="button" className="button" disabled={reading} onClick={() => void back.run({})}>
            Back <Keys keys="Bksp" />
          </button>
          <button type="button" className="button button-quiet work-end" onClick={() => setBreakingOff(true)}>
            Break off <Keys keys="B" />
          </button>
        </div>
      </div>
      <aside className="work-side" aria-label="Steps">
        {isVirtual ? (
          <VirtualWeights
            askedN={askedN}
            hungN={hungN}
            preloading={state.phase === 'preloading'}
            pending={putWeights.pending}
            onHang={hangAsked}
          />
        ) : null}
        <PositionList state={state} onRepeat={reading ? null : (position) => void repeat.run({ position })} />
        <p className="work-caution">
          {weightsFall} {neverAboveWords(bench.capacityN, force)}
        </p>
      </aside>
      {breakingOff ? <BreakOffDialog onClose={() => setBreakingOff(false)} /> : null}
    </div>
  )
}
