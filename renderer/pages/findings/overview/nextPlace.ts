import type { Box } from '#figures/findings/overview/matrix.ts'

/**
 * Which place a key leads to from another: the next along its row, or that above or below which lies nearest; the same one where
 * there is none, undefined where the key has another use.
 */
export function nextPlace(key: string, at: number, places: readonly Box[]): number | undefined {
  const from = places[at]
  if (from === undefined) return undefined
  const row = places.flatMap((place, index) => (place.y === from.y ? [{ place, index }] : []))
  row.sort((one, other) => one.place.x - other.place.x)
  const here = row.findIndex(({ index }) => index === at)
  if (key === 'Home') return row[0]!.index
  if (key === 'End') return row.at(-1)!.index
  if (key === 'ArrowRight') return (row[here + 1] ?? row[here]!).index
  if (key === 'ArrowLeft') return (row[here - 1] ?? row[here]!).index
  if (key === 'ArrowDown') return nearest(at, places, 1)
  if (key === 'ArrowUp') return nearest(at, places, -1)
  return undefined
}

function nearest(at: number, places: readonly Box[], direction: 1 | -1): number {
  const from = places[at]!
  let best = at
  for (const [index, place] of places.entries()) {
    const away = direction * (place.y - from.y)
    if (away <= 0) continue
    const bestAway = best === at ? Number.POSITIVE_INFINITY : direction * (places[best]!.y - from.y)
    const across = Math.abs(place.x - from.x)
    if (away < bestAway || (away === bestAway && across < Math.abs(places[best]!.x - from.x))) best = index
  }
  return best
}
