import { eventTable, eventTotals, measureAllEvents } from '#tests/reference/eventFigures.ts'

const leastFoundShare = 0.98
const mostFalseShare = 0.01
/** Of a million samples of normal noise none lies further from the middle than this, SDs (R 2 * 1e6 * pnorm(-6) = 0.002). */
const mostPeakSDs = 6

function option(words: readonly string[], name: string, otherwise: number): number {
  const at = words.indexOf(`--${name}`)
  if (at < 0) return otherwise
  const value = Number(words[at + 1])
  if (!(value > 0 && Number.isInteger(value))) throw new RangeError(`--${name} needs a whole number above 0`)
  return value
}

/** `npm run soak -- events --seeds 10 --seed 1`: prints the table of events, false when a figure is not as it must be. */
export async function soak(words: readonly string[]): Promise<boolean> {
  const count = option(words, 'seeds', 10)
  const first = option(words, 'seed', 1)
  const rows = measureAllEvents(first, count)
  console.log(eventTable(rows))
  const { due, found, plainCurves, plainFalse, peakErrorSDs, curves, falseCurves } = eventTotals(rows)
  console.log(
    `\n${curves} curves: ${found} of ${due} drops found (${((100 * found) / due).toFixed(2)} %); false ones on ${plainFalse} of ` +
      `${plainCurves} curves without any (${((100 * plainFalse) / plainCurves).toFixed(2)} %), on ${falseCurves} of all; ` +
      `peak at most ${peakErrorSDs.toFixed(1)} noise SDs off`,
  )
  const faults = rows.flatMap((row) => row.faults.map((fault) => `${row.scenario} ${row.rateHz} Hz ${fault}`))
  for (const fault of faults.slice(0, 40)) console.log(`  ${fault}`)
  return (
    faults.length === 0 &&
    found >= leastFoundShare * due &&
    plainFalse <= mostFalseShare * plainCurves &&
    peakErrorSDs <= mostPeakSDs
  )
}
