import { expect, test } from 'vitest'
import { reevaluationProcedures } from '#contract/reevaluation/procedures.ts'

const begin = reevaluationProcedures['reevaluations.begin'].input
const request = { breakIds: [1, 2], calibrationId: null, settings: {}, by: 'bench' }

test('takes a re-evaluation with a name written without the spaces round it', () => {
  expect(begin.parse({ ...request, by: ' bench ' })).toEqual(request)
  const codes = { endCodes: [-8_388_608, 8_388_607] }
  expect(begin.parse({ ...request, settings: codes }).settings).toEqual(codes)
  expect(begin.parse({ ...request, settings: { endCodes: null } }).settings).toEqual({ endCodes: null })
})

test.each([
  ['no name', { by: '  ' }, 'by'],
  ['a name that no list could show', { by: 'x'.repeat(201) }, 'by'],
  ['no break', { breakIds: [] }, 'breakIds'],
  ['half a break', { breakIds: [1, 1.5] }, 'breakIds'],
  ['no number', { breakIds: [Number.NaN] }, 'breakIds'],
  ['a threshold that is found at capture alone', { settings: { startThresholdN: 5 } }, 'settings'],
  ['a share of more than all', { settings: { endShare: 2 } }, 'settings'],
  ['end codes the wrong way round', { settings: { endCodes: [10, -10] } }, 'settings'],
  ['end codes between which nothing lies', { settings: { endCodes: [5, 5] } }, 'settings'],
])('refuses a re-evaluation with %s', (_name, change, field) => {
  const read = begin.safeParse({ ...request, ...change })
  expect(read.error?.issues.map(({ path }) => path[0])).toEqual([field])
})
