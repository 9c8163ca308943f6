import { pointShapes, ShapeKey } from '../../../widgets/PointFigure.tsx'

/** Which shape is which run, and which is up and down. */
export function RunKeys({ runs, down }: { runs: number; down: boolean }) {
  return (
    <p className="run-keys">
      {pointShapes.slice(0, Math.min(runs, pointShapes.length)).map((shape, index) => (
        <ShapeKey key={shape} shape={shape}>
          {runs > pointShapes.length ? `runs ${index + 1}, ${index + 1 + pointShapes.length}, …` : `run ${index + 1}`}
        </ShapeKey>
      ))}
      {down ? <span>filled: going up, hollow: going down</span> : null}
    </p>
  )
}
