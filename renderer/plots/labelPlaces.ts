/** A label as high as every other, from its left end to its right. */
export type LabelPlace = { x: number; y: number; width: number }

/**
 * Where a label is clear of those that stand already: at the height wanted, else the next free one below, else the next above
 * the lowest that is allowed. `step`: from one line of text to the next; all in pixels.
 */
export function clearHeight(
  wanted: LabelPlace,
  taken: readonly LabelPlace[],
  { step, lowest }: { step: number; lowest: number },
): number {
  const gap = step / 3
  const beside = taken.filter(({ x, width }) => wanted.x < x + width + gap && x < wanted.x + wanted.width + gap)
  // A hair less than a step: rounding must not let two that touch meet for ever
  const meeting = (y: number) => beside.find((other) => Math.abs(other.y - y) < step - 1e-6)
  let y = wanted.y
  for (let other = meeting(y); other !== undefined && y <= lowest; other = meeting(y)) y = other.y + step
  if (y <= lowest) return y
  y = lowest
  for (let other = meeting(y); other !== undefined; other = meeting(y)) y = other.y - step
  return y
}
