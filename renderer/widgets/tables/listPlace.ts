/** Where a person was in a list: how far it was scrolled, CSS pixels, its active row, and whether that row was opened from there. */
export type ListPlace = { topPx: number; active: number; opened: boolean }

const places = new Map<string, ListPlace & { listKey: string }>()

const top: ListPlace = { topPx: 0, active: 0, opened: false }

/** Where the person was in a list when it was last shown, by its name; its top where it has been searched or sorted otherwise since. */
export function placeIn(name: string, listKey: string): ListPlace {
  const place = places.get(name)
  return place?.listKey === listKey ? place : top
}

/** Remembers where the person is, for as long as the page of the program stands. */
export function rememberPlace(name: string, listKey: string, change: Partial<ListPlace>): void {
  places.set(name, { ...placeIn(name, listKey), ...change, listKey })
}
