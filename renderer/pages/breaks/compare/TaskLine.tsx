import type { ComparisonState } from './useComparison.ts'
import type { LoadedCurves } from './useLoadedCurves.ts'

/** What is still under way, how far it is, and how to stop it. */
export function TaskLine({ made, loaded, total }: { made: ComparisonState; loaded: LoadedCurves; total: number }) {
  if (!made.pending && !loaded.pending && !loaded.stopped) return null
  return (
    <div className="compare-tasks">
      {made.pending ? (
        <p>
          <span>Comparing</span>
          <progress
            aria-label="Comparison"
            {...(made.progress === null || made.progress.total === 0
              ? {}
              : { value: made.progress.done, max: made.progress.total })}
          />
          <button type="button" className="button button-small" onClick={made.cancel}>
            Stop
          </button>
        </p>
      ) : null}
      {loaded.pending ? (
        <p>
          <span>
            Curves {loaded.done} of {total}
          </span>
          <progress aria-label="Curves" value={loaded.done} max={total} />
          <button type="button" className="button button-small" onClick={loaded.stop}>
            Stop
          </button>
        </p>
      ) : null}
      {loaded.stopped && loaded.done < total ? (
        <p>
          {loaded.done} of {total} curves are drawn.{' '}
          <button type="button" className="button button-small" onClick={loaded.resume}>
            Fetch the rest
          </button>
        </p>
      ) : null}
    </div>
  )
}
