/** A swing and how often it came: 1 or 0.5. In the unit of the history. */
export type RainflowCycle = { readonly range: number; readonly mean: number; readonly count: 0.5 | 1 }

/** Peaks and valleys of a history, its first and last value among them. Checked: tests/domain/climate/rainflow.spec.ts. */
export function turningPoints(history: ArrayLike<number>): number[] {
  const points: number[] = []
  for (let i = 0; i < history.length; i++) {
    const value = history[i]!
    const last = points.at(-1)
    if (value === last) continue
    const before = points.at(-2)
    const goesOn = last !== undefined && before !== undefined && value > last === last > before
    if (goesOn) points.pop()
    points.push(value)
  }
  return points
}

/**
 * Cycles of a history, counted by rainflow; what is left over counts as half cycles.
 * Source: ASTM E1049-85 5.4.4 (from memory). Checked: tests/domain/climate/rainflow.spec.ts, its example.
 */
export function rainflowCycles(history: ArrayLike<number>): RainflowCycle[] {
  const cycles: RainflowCycle[] = []
  const stack: number[] = []
  const count = (one: number, other: number, share: 0.5 | 1) =>
    cycles.push({ range: Math.abs(one - other), mean: (one + other) / 2, count: share })
  for (const point of turningPoints(history)) {
    stack.push(point)
    while (stack.length >= 3) {
      const [a, b, c] = stack.slice(-3) as [number, number, number]
      if (Math.abs(c - b) < Math.abs(b - a)) break
      if (stack.length === 3) {
        count(a, b, 0.5)
        stack.shift()
      } else {
        count(a, b, 1)
        stack.splice(-3, 2)
      }
    }
  }
  for (let i = 1; i < stack.length; i++) count(stack[i - 1]!, stack[i]!, 0.5)
  return cycles
}
