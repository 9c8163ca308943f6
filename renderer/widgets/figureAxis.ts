/** A stretch of values with the values at which it is named. */
export type AxisSpan = { from: number; to: number; ticks: number[]; decimals: number }

/**
 * A span that holds all values, begins and ends on a round number and is named about `count` times. Values that are all
 * alike get room on both sides; no value at all gives 0 to 1.
 */
export function axisOver(values: readonly number[], count = 5): AxisSpan {
  const known = values.filter(Number.isFinite)
  const least = known.length === 0 ? 0 : Math.min(...known)
  const most = known.length === 0 ? 1 : Math.max(...known)
  const room = most > least ? 0 : Math.abs(most) * 0.05 || 1
  const step = roundStep((most - least + 2 * room) / count)
  const first = Math.floor((least - room) / step + 1e-9)
  const last = Math.ceil((most + room) / step - 1e-9)
  const ticks = Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step)
  return { from: first * step, to: last * step, ticks, decimals: decimalsOf(step) }
}

/** The smallest of 1, 2, 2.5, 5 times a power of ten that is at least `rough`. */
function roundStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough))
  const factor = [1, 2, 2.5, 5, 10].find((one) => one * power >= rough * (1 - 1e-9)) ?? 10
  return factor * power
}

function decimalsOf(step: number): number {
  for (let decimals = 0; decimals < 12; decimals++)
    if (Math.abs(step * 10 ** decimals - Math.round(step * 10 ** decimals)) < 1e-6) return decimals
  return 12
}
