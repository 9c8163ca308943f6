import type { Listening } from '#contract/bench/bench.ts'
import { noLineWords } from '#words/bench/heardWords.ts'
import { lineFormatWords } from '#words/bench/lineFormatWords.ts'
import { writeCount, writeNumber } from '#words/units/numbers.ts'

/** What came in while listening: raw lines, and what they most likely are. */
export function HeardLines({ heard, pending }: { heard: Listening | null; pending: boolean }) {
  if (pending || heard === null) return null
  const rate = heard.linesPerSecond
  return (
    <section className="heard" aria-label="What the port sent" aria-live="polite">
      <div>
        <p className="heard-proposal">
          {heard.proposal === null ? (
            <strong>No format fits.</strong>
          ) : (
            <>
              <strong>Looks like {lineFormatWords(heard.proposal)}.</strong> {Math.round(heard.fit * 100)} % of the
              lines fit.
            </>
          )}
        </p>
        <p className="prose">{heard.advice}</p>
        <p className="quiet">
          {writeCount(heard.bytes)} bytes{rate === null ? '' : `, ${writeNumber(rate, 1)} lines/s`}
        </p>
      </div>
      <pre className="heard-lines">
        {heard.lines.length === 0 ? noLineWords(heard.bytes) : heard.lines.slice(0, 5).join('\n')}
      </pre>
    </section>
  )
}
