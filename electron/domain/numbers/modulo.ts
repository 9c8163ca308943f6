/**
 * What is left of a value when whole widths are taken away or added: from 0 up to, but not, the width.
 *
 *   value − width ⌊value / width⌋
 *
 * Checked: tests/domain/numbers/modulo.spec.ts.
 */
export function modulo(value: number, width: number): number {
  // The remainder of two doubles is slow, and hardly ever wanted.
  if (value >= 0 && value < width) return value
  return ((value % width) + width) % width
}
