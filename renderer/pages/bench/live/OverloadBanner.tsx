import type { BenchState } from '#contract/bench/bench.ts'
import { overloadWords } from '#words/bench/overloadWords.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import './overload.css'

/** Near or above the rated load: words, shape and stripes, at the top of every page, said at once to a screen reader. */
export function OverloadBanner({ bench }: { bench: BenchState }) {
  const { force } = useQuantities()
  const words = overloadWords(bench, (forceN) => force.text(forceN))
  return (
    <div aria-live="assertive" className="overload-place">
      {words === null ? null : (
        <div className="overload" data-level={bench.overload}>
          <svg viewBox="0 0 48 48" aria-hidden="true">
            {bench.overload === 'alarm' ? (
              <>
                <path d="M15 3h18l12 12v18L33 45H15L3 33V15Z" />
                <path className="overload-mark" d="M24 12v15M24 33v3.5" />
              </>
            ) : (
              <>
                <path d="M24 4 46 43H2Z" />
                <path className="overload-mark" d="M24 18v12M24 35v3" />
              </>
            )}
          </svg>
          <div>
            <p className="overload-title">{words.title}</p>
            <p className="overload-advice">{words.advice}</p>
          </div>
        </div>
      )}
    </div>
  )
}
