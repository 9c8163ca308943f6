import type { RoutinePhase } from '#contract/calibration/calibrationRoutine.ts'

const paths = {
  hang: 'M10 1v5M7.5 6h5M5 9h10l2 9H3Z',
  empty: 'M10 1v6a3 3 0 1 1-3 3',
  wait: 'M2 7q4-5 8 0t8 0M2 13q4-5 8 0t8 0',
  average: 'M2 10h16M5 6v8M10 4v12M15 6v8',
} as const

/** What the routine asks for, as a shape: a weight, an empty hook, an unsteady line, an average. */
export function RoutineShape({ phase, atZero }: { phase: RoutinePhase; atZero: boolean }) {
  const name =
    phase === 'waiting-for-steady' || phase === 'holding'
      ? 'wait'
      : phase === 'averaging'
        ? 'average'
        : atZero
          ? 'empty'
          : 'hang'
  return (
    <svg className="routine-shape" data-shape={name} viewBox="0 0 20 20" aria-hidden="true">
      <path d={paths[name]} />
    </svg>
  )
}
