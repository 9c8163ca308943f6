import { placeInStream, runPortCapture } from '#tests/fakes/ports/portCapture.ts'

/**
 * Three breaks through a pseudo-terminal for every line format and rate, or for those that the words name, every stored
 * sample compared with what was sent.
 */
export async function soak(words: readonly string[]): Promise<boolean> {
  let sound = true
  for (const format of ['number', 'columns', 'checked', 'crc'])
    for (const rateHz of [10, 80, 1000, 10_000]) {
      // Where the device sends no time, arrival is the only clock, and the stream must run at its own pace.
      const speed = format === 'number' ? 1 : rateHz === 10_000 ? 4 : 10
      if (words.length > 0 && !words.includes(format) && !words.includes(String(rateHz))) continue
      const startedAt = performance.now()
      const outcome = await runPortCapture({
        emulate: ['--scenario', 'brittle', '--rate', String(rateHz), '--line-format', format, '--speed', String(speed)],
        capture: ['--line-format', format, '--breaks', '3', '--timeout', '400'],
        breaks: 3,
      })
      const places = outcome.curves.map(({ readings }) => placeInStream(readings, outcome.sent))
      const ends = outcome.events.filter(({ event }) => event === 'break')
      const differences = ends.map(({ peakN }, i) => Number(peakN) - (outcome.truths[i]?.highestSampleN ?? Number.NaN))
      const held =
        outcome.captureExit === 0 &&
        ends.length === 3 &&
        places.every((place) => place !== null) &&
        differences.every((difference) => Math.abs(difference) < 5)
      sound &&= held
      const seconds = ((performance.now() - startedAt) / 1000).toFixed(1)
      const stored = outcome.curves.map(({ timeS }) => timeS.length).join(' + ')
      console.log(
        `${held ? 'held  ' : 'FAILED'} ${format.padEnd(8)} ${String(rateHz).padStart(6)} Hz x${speed}: ` +
          `${stored} samples of ${outcome.sent.length} sent; peaks off by ${differences.map((d) => d.toFixed(2)).join(', ')} N; ${seconds} s`,
      )
      if (!held) console.log(outcome.errors, JSON.stringify(outcome.events), JSON.stringify(places))
    }
  return sound
}
