import { expect, test } from 'vitest'
import { addressOfView, viewInAddress } from '#renderer/parts/lists/listAddress.ts'

test('an address says only what differs from the list as it stands at first', () => {
  expect(addressOfView({})).toBe('')
  expect(
    addressOfView({ text: 'epoxy & casein', status: 'broken', filter: { exposure: 'loft', ageMostMonths: 12 } }),
  ).toBe('?text=epoxy+%26+casein&status=broken&exposure=loft&ageMostMonths=12')
})

test('a list is looked at as its address says', () => {
  const view = {
    text: 'C1-LL 50 %',
    status: 'withdrawn',
    sort: 'peakN',
    descending: true,
    filter: { adhesive: 'casein C1', studyId: 7, gapLeastMm: 0, gapMostMm: 0.5 },
  } as const
  const hash = `#/specimens${addressOfView(view)}`
  expect(viewInAddress(hash)).toMatchObject(view)
  expect(addressOfView(viewInAddress(hash)!)).toBe(addressOfView(view))
})

test.each(['#/specimens', '#/specimens?status=sold', '#/specimens?studyId=x', '#/specimens?colour=red'])(
  'an address that says nothing, or what cannot be, is passed over: %s',
  (hash) => expect(viewInAddress(hash)).toBeNull(),
)
