import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { killCaptureCommand } from './killedCommand.ts'

/** A capture may lose what came in so many seconds before the program was killed. */
const mayLoseS = 0.25
/** From the beginning of a loading to well after its break, s of the device. */
const longestRunS = 8
/** Rates with the speeds at which a test machine keeps up. */
const streams = [
  { rateHz: 80, speed: 4 },
  { rateHz: 1000, speed: 2 },
  { rateHz: 10_000, speed: 1 },
  { rateHz: 10, speed: 4 },
]

/** Kills the capture command at random moments, as often as the first word says (200), all into one archive, and checks it after each. */
export async function soak(words: readonly string[]): Promise<boolean> {
  const kills = Number(words[0] ?? 200)
  if (!Number.isInteger(kills) || kills < 1) throw new RangeError('kill takes a number of kills')
  const folder = mkdtempSync(join(tmpdir(), 'breakledger-command-crash-'))
  const totals = { finished: 0, running: 0 }
  let sound = true
  let broke = 0
  let leastSpareS = Number.POSITIVE_INFINITY
  try {
    for (let kill = 1; kill <= kills; kill++) {
      const stream = streams[kill % streams.length]!
      const afterS = (Math.random() * longestRunS) / stream.speed
      const killed = await killCaptureCommand(join(folder, 'killed.breakledger'), {
        ...{ ...stream, seed: kill, after: 'loading', afterS, mayLoseS },
      })
      totals.finished += killed.finished
      if (killed.running) totals.running += 1
      if (killed.lostS !== null) leastSpareS = Math.min(leastSpareS, -killed.lostS / stream.speed)
      if (killed.faults.length === 0) continue
      sound = false
      broke += 1
      console.log(
        `kill ${kill}, ${stream.rateHz} Hz, ${afterS.toFixed(3)} s after loading began:\n  ${killed.faults.join('\n  ')}`,
      )
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
  console.log(
    `${sound ? 'held  ' : 'FAILED'} tried ${kills} kills, held ${kills - broke}, broke ${broke}: ${totals.running} in a capture, ${totals.finished} breaks finished before; ` +
      `the newest stored sample was at most ${(1000 * (mayLoseS - leastSpareS)).toFixed(0)} ms old at a kill (${1000 * mayLoseS} ms may be lost)`,
  )
  return sound
}
