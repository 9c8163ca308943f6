import { temporaryArchive } from '#tests/fakes/temporaryArchive.ts'
import { oddClocks } from './clocks.ts'
import { oddLines } from './lines.ts'
import { oddLoads } from './loads.ts'
import { createOddBench, type OddDevice, type OddOutcome } from './oddBench.ts'
import { oddZeros } from './zeros.ts'

/** Every odd device, each with what is expected of the program. */
export const oddDevices: readonly OddDevice[] = [...oddClocks, ...oddZeros, ...oddLines, ...oddLoads]

/** Of so many devices, those of which was said and captured what is expected, and what was not. */
export type OddFigures = { tried: number; held: number; broke: string[] }

/** Hears devices, one after the other, on one archive. */
export async function hearDevices(devices: readonly OddDevice[]): Promise<OddFigures> {
  const { archive, remove } = await temporaryArchive()
  const bench = await createOddBench(archive)
  const figures: OddFigures = { tried: 0, held: 0, broke: [] }
  try {
    for (const device of devices) {
      const faults = faultsOf(device, await bench.hear(device))
      figures.tried += 1
      if (faults.length === 0) figures.held += 1
      else figures.broke.push(`${device.name}: ${faults.join('; ')}`)
    }
  } finally {
    await bench.close()
    await remove()
  }
  return figures
}

/** What is not as expected, in words. */
export function faultsOf({ expected }: OddDevice, { state, said, log, alarmed }: OddOutcome): string[] {
  const faults: string[] = []
  const check = (holds: boolean, fault: string) => {
    if (!holds) faults.push(fault)
  }
  const { zero, within = 2, flags = [], noFlags = [], notSaid = [], restarts, missing } = expected
  const breaks = log.flatMap((entry) => (entry.event === 'break' ? [entry] : []))
  const peaks = breaks.map(({ peakN }) => peakN ?? Number.NaN)
  check(zero === undefined || zero === (state.tare !== null), zero ? 'no zero was taken' : 'a zero was taken')
  const near = peaks.every((peakN, i) => Math.abs(peakN - expected.peaksN[i]!) <= within)
  check(peaks.length === expected.peaksN.length && near, `breaks of ${peaks.join(', ') || 'none'} N`)
  for (const { flags: has } of breaks) {
    for (const flag of flags)
      check(
        has.some((one) => one === flag),
        `not flagged ${flag}`,
      )
    for (const flag of noFlags) check(!has.some((one) => one === flag), `flagged ${flag}`)
  }
  for (const words of expected.said)
    check(
      said.some((one) => words.test(one)),
      `not said: ${words}`,
    )
  for (const words of notSaid) check(!said.some((one) => words.test(one)), `said: ${words}`)
  check(!said.some((one) => /NaN|undefined|null|Infinity/.test(one)), 'something is said that is no word')
  const mayBeQuiet = expected.said.length > 0 || zero === false || zero === undefined
  check(mayBeQuiet || said.length === 0, `said: ${said.join(' | ')}`)
  check(restarts === undefined || restarts === state.signal.restarts, `${state.signal.restarts} restarts`)
  check(missing === undefined || missing === state.signal.missingSamples, `${state.signal.missingSamples} missing`)
  check(alarmed === (expected.alarm ?? false), alarmed ? 'a false alarm' : 'no alarm')
  return faults
}

/** `npm run soak -- oddDevices [words of their names]`: prints tried, held and broke; false when one broke. */
export async function soak(words: readonly string[]): Promise<boolean> {
  const wanted = words.join(' ')
  const { tried, held, broke } = await hearDevices(oddDevices.filter(({ name }) => name.includes(wanted)))
  console.log(`odd devices: ${tried} tried, ${held} held, ${broke.length} broke`)
  for (const example of broke) console.log(`  ${example}`)
  return tried > 0 && broke.length === 0
}
