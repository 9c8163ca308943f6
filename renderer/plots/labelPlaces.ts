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

/** The area of a plot, pixels. */
export type PlotArea = { left: number; right: number; top: number; bottom: number }

/**
 * Where the name of a mark is wanted. That of a highest point stands above it, where there is no curve; what begins is named
 * where nothing was yet, an event below its mark, as the load goes on upwards. `ratio`: pixels of the screen in one of the page.
 */
export function wantedPlace(
  mark: { shape: 'peak' | 'onset' | 'break' | 'event' | 'word'; x: number; y: number },
  width: number,
  area: PlotArea,
  ratio: number,
): LabelPlace {
  const { shape, x, y } = mark
  const leftmost = area.left + 4 * ratio
  const bottom = area.bottom - 12 * ratio
  if (shape === 'peak' || shape === 'word') {
    const above = y - (shape === 'word' ? 21 : 17) * ratio
    const centred = Math.min(x - width / 2, area.right - 4 * ratio - width)
    return { x: Math.max(centred, leftmost), y: Math.min(Math.max(above, area.top - 4 * ratio), bottom), width }
  }
  const onLeft = shape === 'onset' || x + width + 22 * ratio > area.right
  const wantedY = shape === 'event' ? y + 13 * ratio : shape === 'onset' ? y - 32 * ratio : y
  return {
    x: onLeft ? Math.max(x - width - 12 * ratio, leftmost) : x + 12 * ratio,
    y: Math.min(Math.max(wantedY, area.top + 12 * ratio), bottom),
    width,
  }
}
