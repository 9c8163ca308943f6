/** Why something cannot be done to a curve, and what to do instead. */
export type Refusal = { because: string; cure: string }

/** A figure as a sentence has it: three digits. */
export const rounded = (value: number): number => Number(value.toPrecision(3))

/** Three digits, never above the value, so that what is advised as the most is not refused. */
export function roundedDown(value: number): number {
  const three = rounded(value)
  return three <= value ? three : rounded(value * 0.995)
}

/** Three digits, never below the value. */
export function roundedUp(value: number): number {
  const three = rounded(value)
  return three >= value ? three : rounded(value * 1.005)
}
