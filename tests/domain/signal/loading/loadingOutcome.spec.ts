import { describe, expect, it } from 'vitest'
import { loadingOutcome } from '#domain/signal/loading/loadingOutcome.ts'

/** A loading of 5000 N within a second and a start threshold of 50 N, unless told otherwise. */
const outcome = (told: Partial<Parameters<typeof loadingOutcome>[0]> = {}) =>
  loadingOutcome({ peakLoad: 5000, threshold: 50, loadedInS: 1, fell: true, ...told })

describe('what a loading was', () => {
  it('is a break where it ended in a fall that lasts, else an unloading', () => {
    expect(outcome()).toBe('break')
    expect(outcome({ fell: false })).toBe('unloading')
  })

  // A threshold is at least five noise SDs: below three of them a peak is hardly told from a hand on the bench.
  it.each([
    [149.9, 'none'],
    [150, 'break'],
  ] as const)('with a peak of %s N, three start thresholds being 150 N, is %s', (peakLoad, expected) => {
    expect(outcome({ peakLoad })).toBe(expected)
  })

  // A weight that is put on the bench has its full force within some tenths of a second: its own fall of a few centimetres
  // lasts sqrt(2 h / g) = 0.1 s for h = 5 cm. No press loads a block so fast (5 to 60 s in the trade).
  it.each([
    [0.199, 1999, 'none'],
    [0.2, 1999, 'break'],
    [0.001, 2000, 'break'],
    [-1, 1999, 'none'],
  ] as const)('loaded within %s s up to %s N, 40 thresholds being 2000 N, is %s', (loadedInS, peakLoad, expected) => {
    expect(outcome({ loadedInS, peakLoad })).toBe(expected)
  })

  it('counts whatever is loaded as a loading where no threshold is known', () => {
    expect(outcome({ threshold: 0, peakLoad: 0.1, loadedInS: 0 })).toBe('break')
  })
})
