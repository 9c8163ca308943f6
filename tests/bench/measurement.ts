/** One line of the benchmarks' table. */
export type Measurement = {
  /** What was measured, in words. */
  what: string
  value: number
  unit: string
  /** Named and measured in the same run. `times`: how many times better the value is, above 1 when it is better. */
  baseline: { name: string; value: number; times: number } | null
  /** The target in words, and whether it is met; null: measured for information only. */
  target: { text: string; met: boolean } | null
}

/** Why a benchmark cannot run here, in words. */
export type NotRun = { because: string }

/** Each resolves with its measurements; none asserts anything. */
export type Benchmark = () => Promise<Measurement[] | NotRun>

/** The value in the middle of an odd number of values, the mean of the two in the middle else. Throws RangeError for none. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const [low, high] = [sorted[(sorted.length - 1) >> 1], sorted[sorted.length >> 1]]
  if (low === undefined || high === undefined) throw new RangeError('median requires at least one value')
  return (low + high) / 2
}

/** Milliseconds that something takes in the middle of so many times, after one that is not counted. */
export async function medianMs(repeats: number, work: () => unknown): Promise<number> {
  const { work: value } = await medianMsOfEach(repeats, { work })
  return value
}

/** How often something is done without being counted, and by which clock it is timed. */
type Timing = { warmUps: number; nowMs: () => number }
const byTheWall: Timing = { warmUps: 1, nowMs: () => performance.now() }

/**
 * Work that waits for nothing, by the time that this thread has computed, so that other programs do not count, and in the
 * middle of a long run, when the compiler has seen what it works on.
 */
export const computing: Timing = {
  warmUps: 6,
  nowMs: () => {
    const { user, system } = process.threadCpuUsage()
    return (user + system) / 1000
  },
}

/** The same for works that are to be compared: they take turns, so that whatever else the machine does hits all alike. */
export async function medianMsOfEach<Name extends string>(
  repeats: number,
  works: Record<Name, () => unknown>,
  { warmUps, nowMs }: Timing = byTheWall,
): Promise<Record<Name, number>> {
  const names = Object.keys(works) as Name[]
  const times = Object.fromEntries(names.map((name) => [name, [] as number[]])) as Record<Name, number[]>
  for (let i = 0; i < warmUps + repeats; i++)
    for (const name of names) {
      globalThis.gc?.()
      const startedAt = nowMs()
      await works[name]()
      if (i >= warmUps) times[name].push(nowMs() - startedAt)
    }
  return Object.fromEntries(names.map((name) => [name, median(times[name])])) as Record<Name, number>
}
