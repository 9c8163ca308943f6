import { type Axis, valueAxis } from '../axes/axis.ts'

/**
 * Holds zero and all values from least to most, with a place above the highest for its name, in a plot so many heights of its text
 * high. What lies only a little below zero, as noise does, gets a little room and not a whole step.
 */
export function loadAxis(least: number, most: number, heightEm: number): Axis {
  const rows = Math.min(Math.max(Math.floor((heightEm - 4) / 3), 2), 8)
  const aboveZero = valueAxis([0, most], rows)
  const room = 0.04 * aboveZero.to
  const axis = -least < room ? { ...aboveZero, from: -room } : valueAxis([least, most], rows)
  return { ...axis, to: Math.max(axis.to, most * 1.08) }
}
