/** Which rows of a long list are in sight, with some to spare on both sides. */
export function rowsInSight(
  scrollTop: number,
  height: number,
  rowHeight: number,
  total: number,
  spare: number,
): { first: number; last: number } {
  if (!(rowHeight > 0)) throw new RangeError('rowsInSight requires rows higher than 0')
  const first = Math.max(Math.floor(scrollTop / rowHeight) - spare, 0)
  const last = Math.min(Math.ceil((scrollTop + height) / rowHeight) + spare, total)
  return { first: Math.min(first, Math.max(last, 0)), last }
}

/** The pages, as offsets, that hold the rows from `first` up to but not including `last`. */
export function pagesOfRows(first: number, last: number, pageSize: number): number[] {
  const offsets: number[] = []
  for (let offset = Math.floor(first / pageSize) * pageSize; offset < last; offset += pageSize) offsets.push(offset)
  return offsets
}

/** Where to scroll so that a row is wholly in sight; the same place when it is already. */
export function scrollToRow(index: number, scrollTop: number, height: number, rowHeight: number): number {
  const top = index * rowHeight
  if (top < scrollTop) return top
  if (top + rowHeight > scrollTop + height) return top + rowHeight - height
  return scrollTop
}

/** The row that a key leads to from row `index`; null when the key is none of the list's. */
export function rowAfterKey(key: string, index: number, total: number, rowsPerScreen: number): number | null {
  const last = total - 1
  const moves: Record<string, number> = {
    ArrowDown: index + 1,
    ArrowUp: index - 1,
    PageDown: index + rowsPerScreen,
    PageUp: index - rowsPerScreen,
    Home: 0,
    End: last,
  }
  const target = moves[key]
  return target === undefined || total === 0 ? null : Math.min(Math.max(target, 0), last)
}
