/** A place in the program, as the part of the address after "#". */
export type Route =
  | { page: 'bench' }
  | { page: 'connect' }
  | { page: 'specimens' }
  | { page: 'breaks' }
  | { page: 'new-specimen' }
  | { page: 'specimen'; specimenId: number }
  | { page: 'break'; breakId: number }
  | { page: 'archive' }
  | { page: 'settings' }

/** The place that an address names; the bench when it names none. */
export function routeOf(hash: string): Route {
  const [first = '', second = ''] = hash.replace(/^#\/?/, '').split('/')
  const id = /^[1-9]\d{0,14}$/.test(second) ? Number(second) : null
  if (first === 'specimens' && second === 'new') return { page: 'new-specimen' }
  if (first === 'specimens') return id === null ? { page: 'specimens' } : { page: 'specimen', specimenId: id }
  if (first === 'breaks') return id === null ? { page: 'breaks' } : { page: 'break', breakId: id }
  if (first === 'connect' || first === 'archive' || first === 'settings') return { page: first }
  return { page: 'bench' }
}

/** The address of a place. */
export function hashOf(route: Route): string {
  if (route.page === 'specimen') return `#/specimens/${route.specimenId}`
  if (route.page === 'break') return `#/breaks/${route.breakId}`
  if (route.page === 'new-specimen') return '#/specimens/new'
  return `#/${route.page}`
}
