/** A place in the program, as the part of the address after "#". */
export type Route =
  | { page: 'bench' }
  | { page: 'connect' }
  | { page: 'specimens' }
  | { page: 'breaks' }
  | { page: 'new-specimen' }
  | { page: 'specimen'; specimenId: number }
  | { page: 'break'; breakId: number }
  /** At most `mostCompared` breaks beside each other. */
  | { page: 'compare'; breakIds: readonly number[] }
  | { page: 'reevaluations' }
  /** `breakId`: this one alone is proposed. */
  | { page: 'new-reevaluation'; breakId?: number }
  | { page: 'reevaluation'; reevaluationId: number }
  | { page: 'calibration' }
  | { page: 'weights' }
  | { page: 'calibration-run' }
  | { page: 'check-weight' }
  | { page: 'calibration-record'; calibrationId: number }
  | { page: 'archive' }
  | { page: 'settings' }

/** How many breaks are compared at once. */
export const mostCompared = 200

/** The place that an address names; the bench when it names none. */
export function routeOf(hash: string): Route {
  const [first = '', second = '', third = ''] = hash.replace(/^#\/?/, '').split('/')
  const id = idOf(second)
  if (first === 'specimens' && second === 'new') return { page: 'new-specimen' }
  if (first === 'specimens') return id === null ? { page: 'specimens' } : { page: 'specimen', specimenId: id }
  if (first === 'breaks') return id === null ? { page: 'breaks' } : { page: 'break', breakId: id }
  if (first === 'reevaluations') return reevaluationRoute(second, id, idOf(third))
  if (first === 'compare') return { page: 'compare', breakIds: idsOf(second) }
  if (first === 'calibration') return calibrationRoute(second, id)
  if (first === 'connect' || first === 'archive' || first === 'settings') return { page: first }
  return { page: 'bench' }
}

function idOf(text: string): number | null {
  return /^[1-9]\d{0,14}$/.test(text) ? Number(text) : null
}

function reevaluationRoute(second: string, id: number | null, breakId: number | null): Route {
  if (second === 'new') return breakId === null ? { page: 'new-reevaluation' } : { page: 'new-reevaluation', breakId }
  return id === null ? { page: 'reevaluations' } : { page: 'reevaluation', reevaluationId: id }
}

function calibrationRoute(second: string, id: number | null): Route {
  if (second === 'weights') return { page: 'weights' }
  if (second === 'run') return { page: 'calibration-run' }
  if (second === 'check') return { page: 'check-weight' }
  return id === null ? { page: 'calibration' } : { page: 'calibration-record', calibrationId: id }
}

/** Each number once, in the order of the address; what is no number is passed over. */
function idsOf(words: string): number[] {
  const ids = words.split(',').map(idOf)
  return [...new Set(ids.filter((id) => id !== null))].slice(0, mostCompared)
}

/** The address of a place. */
export function hashOf(route: Route): string {
  if (route.page === 'specimen') return `#/specimens/${route.specimenId}`
  if (route.page === 'break') return `#/breaks/${route.breakId}`
  if (route.page === 'new-reevaluation')
    return route.breakId === undefined ? '#/reevaluations/new' : `#/reevaluations/new/${route.breakId}`
  if (route.page === 'reevaluation') return `#/reevaluations/${route.reevaluationId}`
  if (route.page === 'compare')
    return route.breakIds.length === 0 ? '#/compare' : `#/compare/${route.breakIds.join(',')}`
  if (route.page === 'new-specimen') return '#/specimens/new'
  if (route.page === 'weights') return '#/calibration/weights'
  if (route.page === 'calibration-run') return '#/calibration/run'
  if (route.page === 'check-weight') return '#/calibration/check'
  if (route.page === 'calibration-record') return `#/calibration/${route.calibrationId}`
  return `#/${route.page}`
}
