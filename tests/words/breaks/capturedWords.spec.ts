import { describe, expect, it } from 'vitest'
import { type CapturedBreak, capturedWords } from '#words/breaks/capturedWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { force } = quantitiesIn('SI')
const captured: CapturedBreak = {
  ...{ breakId: 7, outcome: 'break', peakN: 5939.1, samples: 3554, flags: [] },
  ...{ timesVerified: null, expandedUncertaintyN: null },
}

describe('capturedWords', () => {
  it('says what a break came to', () => {
    expect(capturedWords(captured, force)).toBe('break 7 broke at 5939.1 N (3554 samples)')
  })
  it('adds the uncertainty inside the verified range, and by how much the peak lies above it', () => {
    expect(capturedWords({ ...captured, timesVerified: 0.8, expandedUncertaintyN: 9.04 }, force)).toBe(
      'break 7 broke at 5939.1 N ± 9.0 N (k = 2) (3554 samples)',
    )
    expect(capturedWords({ ...captured, timesVerified: 1.6, flags: ['above-verified-range'] }, force)).toBe(
      'break 7 broke at 5939.1 N (3554 samples; above verified range (1.6 ×))',
    )
  })
  it('says of a load that was taken off that nothing broke', () => {
    expect(capturedWords({ ...captured, outcome: 'unloading', peakN: null }, force)).toBe(
      'break 7 was unloaded without a break after unknown force (3554 samples)',
    )
  })
})
