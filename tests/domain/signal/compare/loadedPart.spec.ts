import { expect, test } from 'vitest'
import { loadedPart } from '#domain/signal/compare/loadedPart.ts'

test('lasts from the onset to the break, also where the load slipped back from its peak before it', () => {
  expect(loadedPart({ onsetTimeS: 2, peakTimeS: 8, breakTimeS: 9.5 })).toEqual({ fromS: 2, toS: 9.5 })
})

test('ends at the peak where there is no break', () => {
  expect(loadedPart({ onsetTimeS: 2, peakTimeS: 8, breakTimeS: null })).toEqual({ fromS: 2, toS: 8 })
})

test('reaches to a peak that a person picked after the break, and begins with the curve where no onset was found', () => {
  expect(loadedPart({ onsetTimeS: null, peakTimeS: 11, breakTimeS: 9.5 })).toEqual({ fromS: 0, toS: 11 })
})

test('never ends before it begins', () => {
  expect(loadedPart({ onsetTimeS: 7, peakTimeS: 3, breakTimeS: null })).toEqual({ fromS: 3, toS: 3 })
})

test('ends at the break where no sample counts as the peak', () => {
  expect(loadedPart({ onsetTimeS: 2, peakTimeS: null, breakTimeS: 9.5 })).toEqual({ fromS: 2, toS: 9.5 })
})

test('there is none without peak and break', () => {
  expect(loadedPart({ onsetTimeS: 2, peakTimeS: null, breakTimeS: null })).toBeNull()
})
