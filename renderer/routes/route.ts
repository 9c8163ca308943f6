import { routeTable } from './routeTable.ts'

type Row = (typeof routeTable)[number]

/** The name of a screen. */
export type PageName = Row['page']

type ParameterOf<Segment extends string> = Segment extends `{${infer Name}*}`
  ? { [key in Name]: readonly number[] }
  : Segment extends `{${infer Name}?}`
    ? { [key in Name]?: number }
    : Segment extends `{${infer Name}}`
      ? { [key in Name]: number }
      : unknown

type ParametersIn<Path extends string> = Path extends `${infer First}/${infer Rest}`
  ? ParameterOf<First> & ParametersIn<Rest>
  : ParameterOf<Path>

/** What the address of a page says beside its name: numbers of records. */
export type ParametersOf<Page extends PageName> = ParametersIn<Extract<Row, { page: Page }>['path']>

/** A place in the program: a page and the numbers in its address. */
export type Route = { [Page in PageName]: { page: Page } & ParametersOf<Page> }[PageName]

/** How many breaks are compared at once: no list in an address is longer. */
export const mostCompared = 200

type Parameters = Record<string, number | readonly number[]>

/**
 * The place that an address names. One that says more than any page knows is read as far as it can be; the bench when it
 * names none. What stands behind a question mark says how the page is looked at, and not which.
 */
export function routeOf(hash: string): Route {
  const words = hash.replace(/^#\/?/, '').replace(/\?.*$/, '').split('/')
  let best = { page: 'bench' as PageName, read: 0, parameters: {} as Parameters }
  for (const { page, path } of routeTable) {
    const { read, parameters } = readAlong(path.split('/'), words)
    if (read > best.read) best = { page, read, parameters }
  }
  // The parameters were read along the path of this very page
  return { page: best.page, ...best.parameters } as Route
}

/** How many words of an address a path accounts for, 0 when it does not fit, and the numbers found on the way. */
function readAlong(path: readonly string[], words: readonly string[]): { read: number; parameters: Parameters } {
  const parameters: Parameters = {}
  let read = 0
  for (const [index, segment] of path.entries()) {
    const word = words[index] ?? ''
    const { name, kind } = segmentOf(segment)
    const id = idOf(word)
    if (kind === 'list') parameters[name] = idsOf(word)
    else if (kind !== 'word' && id !== null) parameters[name] = id
    else if (kind === 'number' || (kind === 'word' && word !== name)) return { read: 0, parameters: {} }
    read++
  }
  return { read, parameters }
}

type Segment = { name: string; kind: 'word' | 'number' | 'maybe' | 'list' }

function segmentOf(segment: string): Segment {
  const parameter = /^\{(\w+)([?*]?)\}$/.exec(segment)
  if (parameter === null) return { name: segment, kind: 'word' }
  const [, name = '', mark] = parameter
  return { name, kind: mark === '*' ? 'list' : mark === '?' ? 'maybe' : 'number' }
}

function idOf(text: string): number | null {
  return /^[1-9]\d{0,14}$/.test(text) ? Number(text) : null
}

/** Each number once, in the order of the address; what is no number is passed over. */
function idsOf(words: string): number[] {
  const ids = words.split(',').map(idOf)
  return [...new Set(ids.filter((id) => id !== null))].slice(0, mostCompared)
}

/** The address of a place. */
export function hashOf(route: Route): string {
  const parameters: Partial<Parameters> = route as Omit<Route, 'page'>
  const words = rowOf(route.page)
    .path.split('/')
    .map((segment) => {
      const { name, kind } = segmentOf(segment)
      if (kind === 'word') return name
      const value = parameters[name]
      return typeof value === 'object' ? value.join(',') : value === undefined ? '' : String(value)
    })
  return `#/${words.filter((word) => word !== '').join('/')}`
}

/** What tells a place from another: its address, without numbers that may change while one stays. */
export function placeKeyOf(route: Route): string {
  return 'staysInPlace' in rowOf(route.page) ? route.page : hashOf(route)
}

/** A place of the navigation, by the page it leads to. */
export type PlaceName = Extract<Row, { name: string }>['page']

/** The places of the navigation, in their order. `key`: the single key that leads there; null: none. */
export const places: readonly { page: PlaceName; name: string; key: string | null }[] = routeTable.flatMap((row) =>
  'name' in row ? [{ page: row.page, name: row.name, key: 'key' in row ? row.key : null }] : [],
)

/** The place of the navigation that a page belongs to. */
export function placeOf(page: PageName): PlaceName {
  const row = rowOf(page)
  return 'under' in row ? row.under : row.page
}

function rowOf(page: PageName): Row {
  return routeTable.find((row) => row.page === page)!
}
