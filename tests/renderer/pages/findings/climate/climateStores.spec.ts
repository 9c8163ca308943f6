import { expect, it } from 'vitest'
import { keyOfStore, storesOf } from '#renderer/pages/findings/climate/climateStores.ts'

it('names each store once, those with readings that count first', () => {
  const aside = { by: 'bench', reason: 'wrong', recordedAt: '2026-01-01T00:00:00.000Z' }
  const stores = storesOf([
    { storeKind: 'place', store: 'shelf 3', setAside: aside },
    { storeKind: 'exposure', store: 'loft', setAside: null },
    { storeKind: 'exposure', store: 'loft', setAside: aside },
  ])
  expect(stores.map(keyOfStore)).toEqual(['exposure loft', 'place shelf 3'])
})
