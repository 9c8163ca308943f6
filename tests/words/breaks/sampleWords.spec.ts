import { describe, expect, it } from 'vitest'
import { sampleWords } from '#words/breaks/sampleWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'
import { createScriptedHost } from '../../fakes/scripted/scriptedHost.ts'

const { force } = quantitiesIn('SI')

describe('sampleWords', () => {
  const host = createScriptedHost()
  host.addBreak(4000)
  const record = host.breaks[0]!
  const evaluation = record.evaluations[0]!

  it('gives the load under the scale and the zero in force', () => {
    const under = { ...evaluation, scale: { kind: 'uncalibrated-scale', nPerCount: 0.5 } as const, tareOffset: 100 }
    // 0.5 N per count x 4000 counts - 100 N
    expect(sampleWords({ ...record, evaluations: [under] }, { reading: 4000, timeS: 3.25 }, force)).toBe(
      '1900\u00a0N at 3.250 s',
    )
  })
  it('takes scale and zero of the capture where no result is in force, and no zero where none was taken', () => {
    const header = { ...record.header, scale: { kind: 'uncalibrated-scale', nPerCount: 0.5 } as const, tare: null }
    expect(sampleWords({ header, evaluations: [], inForceId: null }, { reading: 4000, timeS: 3.25 }, force)).toBe(
      '2000\u00a0N at 3.250 s',
    )
  })
  it('gives counts where there is no scale', () => {
    const bare = { ...evaluation, scale: { kind: 'none' } as const, tareOffset: 10 }
    expect(sampleWords({ ...record, evaluations: [bare] }, { reading: 4000, timeS: 3.25 }, force)).toBe(
      '3990 counts at 3.250 s',
    )
  })
})
