import { useEffect, useRef } from 'react'
import type { RoutinePosition, RoutineState } from '#contract/calibration/calibrationRoutine.ts'
import { progressWords } from '#words/calibration/routine/routineWords.ts'
import { loadText, stackWords } from '#words/calibration/weightWords.ts'
import { signedNumber } from '#words/units/numbers.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import './positions.css'

/** Every reading of the routine in its order: done, at hand, ahead or left out, by shape and word. */
export function PositionList({
  state,
  onRepeat,
}: {
  state: RoutineState
  onRepeat: ((position: number) => void) | null
}) {
  const { force } = useQuantities()
  const list = useRef<HTMLElement>(null)
  const { current, positions } = state

  // The reading at hand stays in sight as the routine goes on
  useEffect(() => {
    const scroller = list.current
    const row = scroller?.querySelector<HTMLElement>(`[data-position="${current}"]`)
    if (!scroller || !row) return
    const inScroller = row.getBoundingClientRect().top - scroller.getBoundingClientRect().top
    scroller.scrollTop += inScroller - scroller.clientHeight / 2
  }, [current])

  return (
    <section className="positions" aria-label="Progress">
      <div className="section-head">
        <h2>{progressWords(state)}</h2>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a list that scrolls is reached by keys */}
      <section className="positions-scroll" ref={list} tabIndex={0} aria-label="Readings in their order">
        {[...new Set(positions.map(({ run }) => run))].map((run) => (
          <div key={run}>
            <h3>Run {run}</h3>
            <ol>
              {positions.map((position, index) => {
                if (position.run !== run) return null
                const here = index === current
                const reading = position.reading === null ? undefined : state.readings[position.reading]
                return (
                  <li
                    key={index}
                    data-position={index}
                    data-here={here ? '' : undefined}
                    aria-current={here ? 'step' : undefined}
                  >
                    <StandingShape position={position} here={here} />
                    <span className="position-load">
                      {position.weights.length === 0 ? 'zero' : loadText(position.forceN, force)}
                    </span>
                    <span className="position-words" title={stackWords(position.weights)}>
                      {standingWords(position, here, reading?.residualN ?? null, force.factor, force.unit)}
                    </span>
                    {position.standing === 'taken' && !here && onRepeat !== null ? (
                      <button
                        type="button"
                        className="button button-small button-quiet"
                        aria-label={`Read again: run ${run}, ${position.weights.length === 0 ? 'zero' : loadText(position.forceN, force)}`}
                        onClick={() => onRepeat(index)}
                      >
                        again
                      </button>
                    ) : null}
                  </li>
                )
              })}
            </ol>
          </div>
        ))}
      </section>
    </section>
  )
}

function standingWords(
  position: RoutinePosition,
  here: boolean,
  residualN: number | null,
  factor: number,
  unit: string,
): string {
  if (here) return position.standing === 'taken' ? 'now, once more' : 'now'
  if (position.standing === 'skipped') return 'left out'
  if (position.standing === 'ahead') return position.direction === 'up' ? '' : 'down'
  return residualN === null ? 'read' : `${signedNumber(residualN * factor, 2)} ${unit}`
}

function StandingShape({ position, here }: { position: RoutinePosition; here: boolean }) {
  const path = here
    ? 'M3 2l8 5-8 5Z'
    : position.standing === 'taken'
      ? 'M2 7.5l3.5 3.5L12 3'
      : position.standing === 'skipped'
        ? 'M3 3l8 8M11 3l-8 8'
        : 'M4 7a3 3 0 1 1 6 0a3 3 0 1 1-6 0Z'
  const word = here ? 'now' : { taken: 'read', skipped: 'left out', ahead: 'ahead' }[position.standing]
  return (
    <>
      <svg className="position-shape" data-here={here ? '' : undefined} viewBox="0 0 14 14" aria-hidden="true">
        <path d={path} />
      </svg>
      <span className="visually-hidden">{word}: </span>
    </>
  )
}
