import { expect, it } from 'vitest'
import { hashOf, type Route, routeOf } from '#renderer/routes/route.ts'

const routes: Route[] = [
  { page: 'bench' },
  { page: 'connect' },
  { page: 'specimens' },
  { page: 'breaks' },
  { page: 'new-specimen' },
  { page: 'specimen', specimenId: 12 },
  { page: 'break', breakId: 34 },
  { page: 'compare', breakIds: [] },
  { page: 'compare', breakIds: [12, 3, 45] },
  { page: 'reevaluations' },
  { page: 'new-reevaluation' },
  { page: 'new-reevaluation', breakId: 34 },
  { page: 'reevaluation', reevaluationId: 6 },
  { page: 'calibration' },
  { page: 'weights' },
  { page: 'calibration-run' },
  { page: 'check-weight' },
  { page: 'calibration-record', calibrationId: 5 },
  { page: 'archive' },
  { page: 'settings' },
]

it.each(routes)('finds the way back to %j', (route) => expect(routeOf(hashOf(route))).toEqual(route))
it.each(['', '#', '#/nowhere', '#//'])('leads %j to the bench', (hash) =>
  expect(routeOf(hash)).toEqual({ page: 'bench' }),
)
it.each(['#/calibration', '#/calibration/0', '#/calibration/nowhere'])('leads %s to the calibrations', (hash) =>
  expect(routeOf(hash)).toEqual({ page: 'calibration' }),
)
it.each(['#/breaks/0', '#/breaks/1e3', '#/breaks/-4', '#/breaks/constructor'])('leads %s to the list', (hash) =>
  expect(routeOf(hash)).toEqual({ page: 'breaks' }),
)
it.each(['#/reevaluations/0', '#/reevaluations/old'])('leads %s to all that was evaluated again', (hash) =>
  expect(routeOf(hash)).toEqual({ page: 'reevaluations' }),
)
it('leads a new evaluation of no break to the choice of breaks', () =>
  expect(routeOf('#/reevaluations/new/none')).toEqual({ page: 'new-reevaluation' }))
it('compares each break once, passes over what is no number, and takes no more than 200', () => {
  expect(routeOf('#/compare/4,4,x,0,-1,1e3,7')).toEqual({ page: 'compare', breakIds: [4, 7] })
  const many = Array.from({ length: 300 }, (_, i) => i + 1)
  expect(routeOf(`#/compare/${many.join(',')}`)).toEqual({ page: 'compare', breakIds: many.slice(0, 200) })
})
