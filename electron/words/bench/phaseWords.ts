import type { BenchState } from '#contract/bench/bench.ts'
import { outcomeWords } from '../breaks/outcomeWords.ts'
import { capitalised } from '../sentence.ts'
import { connectionWords } from './connectionWords.ts'
import { outcomePeakN } from './outcomePeak.ts'

/** The state of the bench in words: what it is, and what that asks of the person. */
export type PhaseWords = { title: string; advice: string }

/** Says the phase of the bench; `force` writes a force in the units shown. */
export function phaseWords(bench: BenchState, force: (forceN: number) => string): PhaseWords {
  const { phase, connection } = bench
  if (phase === 'no-signal') {
    if (connection.status === 'closed')
      return { title: connectionWords(connection), advice: 'Connect an amplifier or try the demo.' }
    if (connection.status === 'opening') return { title: connectionWords(connection), advice: connection.label }
    if (connection.status === 'lost')
      return { title: connectionWords(connection), advice: 'Waiting for the amplifier to come back.' }
    return { title: 'No readings', advice: 'The amplifier is connected, but no reading arrives.' }
  }
  if (phase === 'settling') {
    const because = bench.signal.unstableBecause
    return {
      title: 'Taking the zero',
      advice: `Leave the bench unloaded ${because === null ? 'until the reading is steady.' : `until there is one: ${because}.`}`,
    }
  }
  if (phase === 'loading') return { title: 'Loading', advice: 'Guard closed. Hands clear.' }
  const peakN = outcomePeakN(bench)
  if (phase === 'broke') {
    const title = peakN === null ? 'Broke' : `Broke at ${force(peakN)}`
    return { title, advice: bench.armed ? 'Look at the faces, then put in the next specimen.' : 'Look at the faces.' }
  }
  if (phase === 'unloaded')
    return { title: capitalised(outcomeWords.unloading), advice: 'Kept, but never counted as a strength.' }
  if (bench.busyWith !== null)
    return {
      title: bench.busyWith === 'calibration' ? 'Calibrating' : 'Checking with a weight',
      advice: 'No break is recorded until that is done.',
    }
  if (!bench.armed) return { title: 'Recording is off', advice: 'Loads are shown but not recorded.' }
  return {
    title: 'Waiting for load',
    advice:
      bench.specimen === null ? 'No specimen is chosen: the break will have none.' : 'Recording starts by itself.',
  }
}

/** Why the zero cannot be taken now, or null when it can. */
export function tareHindrance(bench: BenchState): string | null {
  if (bench.phase === 'no-signal') return 'there is no signal'
  if (bench.phase === 'loading') return 'a specimen is being loaded'
  if (bench.busyWith !== null) return 'known weights are being hung'
  return bench.signal.unstableBecause
}
