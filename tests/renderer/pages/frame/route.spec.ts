import { expect, it } from 'vitest'
import { hashOf, type Route, routeOf } from '#renderer/pages/frame/route.ts'

const routes: Route[] = [
  { page: 'bench' },
  { page: 'connect' },
  { page: 'specimens' },
  { page: 'breaks' },
  { page: 'new-specimen' },
  { page: 'specimen', specimenId: 12 },
  { page: 'break', breakId: 34 },
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
