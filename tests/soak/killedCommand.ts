import { dirname, join } from 'node:path'
import { systemClock } from '#acquisition/clock.ts'
import { type BenchModelOptions, createBenchModel } from '#acquisition/virtual/benchModel.ts'
import { openVirtualPort } from '#acquisition/virtual/port/virtualPort.ts'
import { openArchive } from '#archive/openArchive.ts'
import { readKeptHeads } from '#engine/keeping/keptHeads.ts'
import { startCommand } from '#tests/fakes/commandProcess.ts'
import { placeInStream } from '#tests/fakes/ports/portCapture.ts'

export type Killing = {
  rateHz: number
  /** Device seconds in a second. */
  speed: number
  seed: number
  /** What the program said before it is killed. */
  after: 'loading' | 'break'
  /** So long after that, s; 0: at once. */
  afterS: number
  /** The capture may lose what came in so many seconds before; null: not asked, as it depends on the time the machine has. */
  mayLoseS: number | null
}

/** What a killed capture command left behind, besides the faults that were found. */
export type Killed = { faults: string[]; finished: number; running: boolean; lostS: number | null }

/** Lets `capture` record a pseudo-terminal into an archive, kills it without warning, and checks all that the archive holds then. */
export async function killCaptureCommand(path: string, killing: Killing): Promise<Killed> {
  const { rateHz, speed, seed, after, afterS, mayLoseS } = killing
  const bench: BenchModelOptions = {
    scenario: 'brittle',
    rateHz,
    seed,
    restS: [2, 2.5],
    knocksPerHour: 0,
    specimen: (drawn) => ({ ...drawn, loadingS: 5 }),
  }
  const port = await openVirtualPort({ ...bench, speed, unread: 'lose' }, systemClock)
  const capture = startCommand(['capture', '--port', port.path, '--archive', path, '--scale', '0.01'], {
    XDG_DATA_HOME: dirname(path),
  })
  let certainUntilS = 0
  let killedAt = 0
  try {
    await capture.until(({ event }) => event === after)
    const killAtS = systemClock.nowS() + afterS
    // How far the device had got when, for what is owed at the kill.
    const given: { atS: number; deviceS: number }[] = []
    while (systemClock.nowS() < killAtS) {
      given.push({ atS: systemClock.nowS(), deviceS: port.amplifier.givenUntilS() })
      await new Promise((resolve) => setTimeout(resolve, 4))
    }
    const killedAtS = systemClock.nowS()
    killedAt = Date.parse(systemClock.instant())
    capture.child.kill('SIGKILL')
    const owedUntilS = killedAtS - (mayLoseS ?? Number.POSITIVE_INFINITY)
    certainUntilS = given.findLast(({ atS }) => atS <= owedUntilS)?.deviceS ?? 0
    await capture.ended
  } finally {
    capture.child.kill('SIGKILL')
    port.stop()
  }
  return leftBehind(path, capture.lines, sentBy(bench, port.amplifier.bench.counts().sent), rateHz, {
    certainUntilS,
    owedUntil: killedAt - 1000 * (mayLoseS ?? Number.POSITIVE_INFINITY),
  })
}

/** The bench is the same each time that it is made, so what it sent can be made again. */
function sentBy(options: BenchModelOptions, samples: number): Float64Array {
  const counts = new Float64Array(samples)
  createBenchModel(options).fill({ timeUs: new Float64Array(samples), counts, sequence: new Float64Array(samples) })
  return counts
}

async function leftBehind(
  path: string,
  events: readonly Record<string, unknown>[],
  sent: Float64Array,
  rateHz: number,
  { certainUntilS, owedUntil }: { certainUntilS: number; owedUntil: number },
): Promise<Killed> {
  const faults: string[] = []
  const ends = events.filter(({ event }) => event === 'break' || event === 'unloading')
  const begun = events.filter(({ event }) => event === 'loading').map(({ breakId }) => Number(breakId))
  const archive = await openArchive({ path, program: 'breakledger test' })
  let running = false
  let lostS: number | null = null
  try {
    const kept = Object.values(readKeptHeads(join(dirname(path), 'breakledger/heads.json')))
    if (kept.length !== 1 || (await archive.heldAgainst(kept[0]!)) !== null)
      faults.push('the archive does not hold the head that was kept of it')
    const report = await archive.verify(() => {}, new AbortController().signal)
    for (const { where, what } of report.faults) faults.push(`${where}: ${what}`)
    for (const breakId of begun) {
      const { header, end, summary } = await archive.break(breakId)
      const { readings } = await archive.readCurve(breakId)
      const place = placeInStream(readings, sent)
      if (place === null) {
        faults.push(`break ${breakId}: ${readings.length} samples are not those that were sent`)
        continue
      }
      const told = ends.find((event) => event.breakId === breakId)
      if (told !== undefined) {
        if (end?.ending !== 'complete' || summary.peakN !== told.peakN || readings.length !== told.samples)
          faults.push(`break ${breakId} was finished and is another now: ${end?.ending}, ${summary.peakN} N`)
      } else if (end?.ending === 'recovered') {
        running = true
        // A capture that began in the time that may be lost owes nothing yet, not even what it keeps from before.
        if (Date.parse(header.startedAt) > owedUntil) continue
        // Half a sample for the stamps, which the device rounds.
        lostS = certainUntilS - (place + readings.length + 0.5) / rateHz
        if (lostS > 0) faults.push(`break ${breakId} lacks ${lostS.toFixed(3)} s that came in good time`)
      } else if (end?.ending !== 'complete') faults.push(`break ${breakId} ended as ${end?.ending}`)
    }
  } finally {
    await archive.close()
  }
  return { faults, finished: ends.length, running, lostS }
}
