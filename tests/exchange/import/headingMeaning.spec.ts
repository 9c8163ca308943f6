import { expect, it } from 'vitest'
import { headingMeaning } from '#exchange/import/headingMeaning.ts'

it.each([
  ['Adhesive', 'adhesive', null],
  ['Glue', 'adhesive', null],
  ['Glue line thickness (mm)', 'bondLineGap', 'mm'],
  ['Glued on', 'gluedOn', null],
  ['Specimen No.', 'number', null],
  ['No', 'number', null],
  ['Load (lbf)', 'load', 'lbf'],
  ['Peak load, kN', 'load', 'kN'],
  ['Max force [N]', 'load', 'N'],
  ['psi', 'strength', 'psi'],
  ['lbs', 'load', 'lbf'],
  ['Shear strength N/mm²', 'strength', 'MPa'],
  ['Max psi', 'strength', 'psi'],
  ['Wood failure %', 'woodFailurePercent', null],
  ['WF', 'woodFailurePercent', null],
  ['Failure mode', 'failurePattern', null],
  ['Test date', 'brokenOn', null],
  ['Age (months)', 'ageMonths', 'months'],
  ['Age in years', 'ageMonths', 'years'],
  ['Age', 'ageMonths', null],
  ['Overlap length (in)', 'overlapLength', 'in'],
  ['Width mm', 'overlapWidth', 'mm'],
  ['length in', 'overlapLength', 'in'],
  ['L (mm)', 'overlapLength', 'mm'],
  ['B mm', 'overlapWidth', 'mm'],
  ['Area, sq in', 'area', 'in2'],
  ['Grain orientation', 'jointType', null],
  ['Condition', 'exposure', null],
  ['Remark', 'note', null],
  ['Shelf', 'place', null],
])('reads “%s” as %s in %s', (heading, field, unit) => {
  expect(headingMeaning(heading)).toEqual({ field, unit, ordinal: null })
})

it.each([
  ['1', null, 1],
  ['Rep 3', null, 3],
  ['#12', null, 12],
  ['Load 2', 'load', 2],
  ['Wood failure 2', 'woodFailurePercent', 2],
])('reads “%s” as one of several', (heading, field, ordinal) => {
  expect(headingMeaning(heading)).toMatchObject({ field, ordinal })
})

it.each(['', 'Saltmarsh Boatyard School: shear blocks (invented)', 'casein C1', 'x'.repeat(90), 'Year', 'B'])(
  'makes nothing of “%s”',
  (heading) => expect(headingMeaning(heading).field).toBeNull(),
)
