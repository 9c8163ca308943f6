/** A swing and how often it came: 1 or 0.5. In the unit of the history. */
export type RainflowCycle = { readonly range: number; readonly mean: number; readonly count: 0.5 | 1 }

/** Takes a history value by value; what is left over at its end counts as half cycles. */
export type RainflowCounter = { push(value: number): void; end(): void }

/** Hears every peak and valley of a history that comes value by value, its first and last value among them. */
function turningPointsOf(hear: (point: number) => void): RainflowCounter {
  let before: number | null = null
  let last: number | null = null
  return {
    push(value) {
      if (before === null) {
        before = value
        hear(value)
      } else if (last === null) {
        if (value !== before) last = value
      } else if (value !== last) {
        if (value > last !== last > before) {
          hear(last)
          before = last
        }
        last = value
      }
    },
    end() {
      if (last !== null) hear(last)
    },
  }
}

/** Peaks and valleys of a history, its first and last value among them. Checked: tests/domain/climate/rainflow.spec.ts. */
export function turningPoints(history: ArrayLike<number>): number[] {
  const points: number[] = []
  const taking = turningPointsOf((point) => points.push(point))
  for (let i = 0; i < history.length; i++) taking.push(history[i]!)
  taking.end()
  return points
}

/**
 * Counts the cycles of a history by rainflow as it comes: memory grows with the swings that are open, not with the history.
 * Source: ASTM E1049-85 5.4.4 (from memory). Checked: tests/domain/climate/rainflow.spec.ts, its example.
 */
export function rainflowCounter(hear: (cycle: RainflowCycle) => void): RainflowCounter {
  const open: number[] = []
  const count = (one: number, other: number, share: 0.5 | 1) =>
    hear({ range: Math.abs(one - other), mean: (one + other) / 2, count: share })
  const taking = turningPointsOf((point) => {
    open.push(point)
    while (open.length >= 3) {
      const [a, b, c] = [open.at(-3)!, open.at(-2)!, open.at(-1)!]
      if (Math.abs(c - b) < Math.abs(b - a)) break
      if (open.length === 3) {
        count(a, b, 0.5)
        open.shift()
      } else {
        count(a, b, 1)
        open.splice(-3, 2)
      }
    }
  })
  return {
    push: taking.push,
    end() {
      taking.end()
      for (let i = 1; i < open.length; i++) count(open[i - 1]!, open[i]!, 0.5)
    },
  }
}

/** All cycles of a history. Checked: tests/domain/climate/rainflow.spec.ts. */
export function rainflowCycles(history: ArrayLike<number>): RainflowCycle[] {
  const cycles: RainflowCycle[] = []
  const counter = rainflowCounter((cycle) => cycles.push(cycle))
  for (let i = 0; i < history.length; i++) counter.push(history[i]!)
  counter.end()
  return cycles
}
