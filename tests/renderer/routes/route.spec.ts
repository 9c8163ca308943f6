import { expect, it } from 'vitest'
import { hashOf, placeKeyOf, placeOf, places, type Route, routeOf } from '#renderer/routes/route.ts'
import { routeTable } from '#renderer/routes/routeTable.ts'
import { shortcuts } from '#renderer/routes/shortcuts.ts'

const routes: Route[] = [
  { page: 'bench' },
  { page: 'connect' },
  { page: 'breakings' },
  { page: 'breaking', breakingSessionId: 2 },
  { page: 'new-breaking' },
  { page: 'new-breaking', studyId: 3 },
  { page: 'due' },
  { page: 'due', studyId: 3 },
  { page: 'labels' },
  { page: 'labels', studyId: 3 },
  { page: 'specimens' },
  { page: 'import' },
  { page: 'readings' },
  { page: 'glue-ups' },
  { page: 'glue-up', glueUpId: 7 },
  { page: 'new-glue-up' },
  { page: 'new-glue-up', studyId: 3 },
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
  { page: 'catalogue' },
  { page: 'catalogue-entry', entryId: 9 },
  { page: 'calibration' },
  { page: 'weights' },
  { page: 'calibration-run' },
  { page: 'check-weight' },
  { page: 'calibration-record', calibrationId: 5 },
  { page: 'archive' },
  { page: 'settings' },
  { page: 'licences' },
  { page: 'findings' },
  { page: 'findings', studyId: 8 },
  { page: 'overview' },
  { page: 'overview', studyId: 8 },
  { page: 'climate' },
  { page: 'new-climate' },
  { page: 'studies' },
  { page: 'study', studyId: 8 },
  { page: 'new-study' },
  { page: 'edit-study', studyId: 8 },
]

it.each(routes)('finds the way back to %j', (route) => expect(routeOf(hashOf(route))).toEqual(route))
it('leads to a list, however it is to be looked at', () =>
  expect(routeOf('#/specimens?text=a/b&exposure=loft')).toEqual({ page: 'specimens' }))
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
it('reads an address that says more than any page knows as far as it can', () => {
  expect(routeOf('#/specimens/12/curve')).toEqual({ page: 'specimen', specimenId: 12 })
  expect(routeOf('#/archive/old')).toEqual({ page: 'archive' })
})

it('writes the addresses that links outside the program may name', () => {
  expect(routes.map(hashOf)).toEqual([
    '#/bench',
    '#/connect',
    '#/breaking',
    '#/breaking/2',
    '#/breaking/new',
    '#/breaking/new/3',
    '#/due',
    '#/due/3',
    '#/labels',
    '#/labels/3',
    '#/specimens',
    '#/import',
    '#/readings',
    '#/glue-ups',
    '#/glue-ups/7',
    '#/glue-ups/new',
    '#/glue-ups/new/3',
    '#/breaks',
    '#/specimens/new',
    '#/specimens/12',
    '#/breaks/34',
    '#/compare',
    '#/compare/12,3,45',
    '#/reevaluations',
    '#/reevaluations/new',
    '#/reevaluations/new/34',
    '#/reevaluations/6',
    '#/catalogue',
    '#/catalogue/9',
    '#/calibration',
    '#/calibration/weights',
    '#/calibration/run',
    '#/calibration/check',
    '#/calibration/5',
    '#/archive',
    '#/settings',
    '#/settings/licences',
    '#/findings',
    '#/findings/8',
    '#/overview',
    '#/overview/8',
    '#/climate',
    '#/climate/new',
    '#/studies',
    '#/studies/8',
    '#/studies/new',
    '#/studies/edit/8',
  ])
})

it('takes another record for another place, and another choice of curves for the same', () => {
  expect(placeKeyOf({ page: 'break', breakId: 1 })).not.toBe(placeKeyOf({ page: 'break', breakId: 2 }))
  expect(placeKeyOf({ page: 'compare', breakIds: [1, 2] })).toBe(placeKeyOf({ page: 'compare', breakIds: [1] }))
})

it('knows every page, and every address, once', () => {
  expect(new Set(routeTable.map(({ page }) => page)).size).toBe(routeTable.length)
  expect(new Set(routeTable.map(({ path }) => path)).size).toBe(routeTable.length)
  expect(new Set(routes.map(({ page }) => page)).size).toBe(routeTable.length)
})

it('gives every page a place in the navigation', () => {
  expect(places.map(({ name }) => name)).toEqual([
    'Bench',
    'Studies',
    'Due',
    'Specimens',
    'Breaks',
    'Calibration',
    'Findings',
    'Archive',
    'Settings',
  ])
  const known = places.map(({ page }) => page)
  for (const { page } of routeTable) expect(known).toContain(placeOf(page))
  expect(placeOf('compare')).toBe('breaks')
  expect(placeOf('check-weight')).toBe('calibration')
})

it('tells the keys of the places in the help, in the order of the navigation', () => {
  const anywhere = shortcuts.filter(({ where }) => where === 'anywhere')
  expect(anywhere.map(({ key, does }) => `${key} ${does}`).slice(0, 6)).toEqual([
    'B Bench',
    'D Studies',
    'E Due',
    'S Specimens',
    'K Breaks',
    'I Calibration',
  ])
  expect(new Set(anywhere.map(({ key }) => key)).size).toBe(anywhere.length)
})
