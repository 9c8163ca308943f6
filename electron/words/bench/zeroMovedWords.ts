import type { BenchState } from '#contract/bench/bench.ts'
import { writeNumber } from '../units/numbers.ts'
import type { Quantity } from '../units/quantities.ts'

/** The question that a zero raises which lies as far from the one before it as a load would. */
export function zeroMovedWords({ by, unit }: NonNullable<BenchState['zeroMoved']>, force: Quantity): string {
  const size = unit === 'N' ? force.text(Math.abs(by)) : `${writeNumber(Math.abs(by), 0)} counts`
  return `This zero lies ${size} ${by < 0 ? 'below' : 'above'} the one before. If something lay on the bench, take it off and take the zero again.`
}
