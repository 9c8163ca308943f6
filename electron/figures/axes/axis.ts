import { scaleLinear } from 'd3-scale'
import { writeFixed } from '#words/units/numbers.ts'

/** A value that an axis names, and how. */
export type Tick = { value: number; label: string }
/** A stretch of values with those that are named. */
export type Axis = { from: number; to: number; ticks: readonly Tick[] }

/**
 * An axis that holds all values, begins and ends on a round number and names about `count` of them. Values that are all
 * alike get room on both sides; no value at all gives 0 to 1.
 */
export function valueAxis(values: readonly number[], count = 5): Axis {
  let least = Number.POSITIVE_INFINITY
  let most = Number.NEGATIVE_INFINITY
  for (const value of values) {
    if (!Number.isFinite(value)) continue
    if (value < least) least = value
    if (value > most) most = value
  }
  if (least > most) return valueAxis([0, 1], count)
  const room = most > least ? 0 : Math.abs(most) * 0.05 || 1
  const scale = scaleLinear([least - room, most + room], [0, 1]).nice(count)
  const [from = 0, to = 1] = scale.domain()
  const named = scale.ticks(count)
  const decimals = decimalsOf(named.length > 1 ? named[1]! - named[0]! : to - from)
  return { from, to, ticks: named.map((value) => ({ value, label: writeFixed(value, decimals) })) }
}

/** An axis from one value to the other exactly, with about `count` round values on it. */
export function spanAxis(from: number, to: number, count: number): Axis {
  const room = to > from ? 0 : 0.5
  const named = scaleLinear([from - room, to + room], [0, 1]).ticks(count)
  const decimals = decimalsOf(named.length > 1 ? named[1]! - named[0]! : 1)
  const ticks = named.map((value) => ({ value, label: writeFixed(value, decimals) }))
  return { from: from - room, to: to + room, ticks }
}

/** An axis of things in their order, each half a step from the ends, at 0, 1, 2, ... */
export function namedAxis(names: readonly string[]): Axis {
  return { from: -0.5, to: Math.max(names.length, 1) - 0.5, ticks: names.map((label, value) => ({ value, label })) }
}

/** Where the values of an axis lie between two pixels. */
export function placesOn(axis: Axis, fromPx: number, toPx: number): (value: number) => number {
  return scaleLinear([axis.from, axis.to], [fromPx, toPx])
}

/** As many decimals as tell a step from its neighbours. */
function decimalsOf(step: number): number {
  for (let decimals = 0; decimals < 12; decimals++)
    if (Math.abs(step * 10 ** decimals - Math.round(step * 10 ** decimals)) < 1e-6) return decimals
  return 12
}
