/** A label as high as every other, from its left end to its right; `upwards`: where others stand in its way, it gives way upwards. */
export type LabelPlace = { x: number; y: number; width: number; upwards?: boolean }

/**
 * Where a label is clear of those that stand already: at the height wanted, else the next free one below, else the next above
 * the lowest that is allowed; one that gives way upwards is tried there first. `step`: from one line of text to the next; all in
 * pixels.
 */
export function clearHeight(
  wanted: LabelPlace,
  taken: readonly LabelPlace[],
  { step, highest, lowest }: { step: number; highest: number; lowest: number },
): number {
  const gap = step / 3
  const beside = taken.filter(({ x, width }) => wanted.x < x + width + gap && x < wanted.x + wanted.width + gap)
  // A hair less than a step: rounding must not let two that touch meet for ever
  const meeting = (y: number) => beside.find((other) => Math.abs(other.y - y) < step - 1e-6)
  /** The next free height; null: outside what is allowed. */
  const free = (from: number, by: number): number | null => {
    let y = from
    for (let other = meeting(y); other !== undefined && y >= highest && y <= lowest; other = meeting(y))
      y = other.y + by
    return y >= highest && y <= lowest ? y : null
  }
  const above = wanted.upwards === true ? free(wanted.y, -step) : null
  return above ?? free(wanted.y, step) ?? free(lowest, -step) ?? lowest
}

/** The area of a plot, pixels. */
export type PlotArea = { left: number; right: number; top: number; bottom: number }

/**
 * Where the name of a mark is wanted, clear of the curve: that of a highest point stands above it, a person's before it; what
 * begins is named where nothing was yet, an event below its mark, as the load goes on upwards, or before it where its name would
 * lie on the fall of the load, and a break above what is left of the load. `fallX`: where it falls; null: nowhere. `ratio`: pixels
 * of the screen in one of the page.
 */
export function wantedPlace(
  { shape, x, y }: { shape: 'peak' | 'onset' | 'break' | 'event' | 'word'; x: number; y: number },
  width: number,
  area: PlotArea,
  fallX: number | null,
  ratio: number,
): LabelPlace {
  const leftmost = area.left + 4 * ratio
  const rightmost = area.right - 4 * ratio - width
  const bottom = area.bottom - 12 * ratio
  const within = (wantedX: number, wantedY: number, top = area.top + 12 * ratio): LabelPlace => ({
    x: Math.max(wantedX, leftmost),
    y: Math.min(Math.max(wantedY, top), bottom),
    width,
  })
  const [before, after] = [x - width - 12 * ratio, x + 12 * ratio]
  if (shape === 'peak') return within(Math.min(x - width / 2, rightmost), y - 17 * ratio, area.top - 4 * ratio)
  if (shape === 'word') return within(Math.min(x + 10 * ratio - width, rightmost), y - 21 * ratio, area.top - 4 * ratio)
  if (shape === 'onset') return within(before, y - 32 * ratio)
  const isAtEnd = after + width + 10 * ratio > area.right
  if (shape === 'break') return within(isAtEnd ? before : after, y - 13 * ratio)
  const isOnFall = fallX !== null && x < fallX && after + width + 4 * ratio > fallX
  if (isOnFall) return { ...within(before, y - 16 * ratio), upwards: true }
  return within(isAtEnd ? before : after, y + 13 * ratio)
}
