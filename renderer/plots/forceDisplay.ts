import { withoutEndingZeros, writeNumber } from '#words/units/numbers.ts'
import type { Quantities } from '#words/units/quantities.ts'

/** How forces of a curve are shown: multiplied by `factor`, written by `format`, named `unit`. */
export type ForceDisplay = { factor: number; unit: string; format(shown: number): string }

/** How a force is drawn: in the units of the program, or in counts where there is no scale. */
export function displayOf(quantities: Quantities, inCounts: boolean): ForceDisplay {
  const format = (shown: number) => withoutEndingZeros(writeNumber(shown, 3))
  return inCounts
    ? { factor: 1, unit: 'counts', format }
    : { factor: quantities.force.factor, unit: quantities.force.unit, format }
}
