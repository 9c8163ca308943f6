import { beforeEach, describe, expect, it } from 'vitest'
import { isInCounts, sceneInForce } from '#renderer/parts/curve/sceneInForce.ts'
import { scriptedCurve } from '#tests/fakes/scripted/scriptedCurve.ts'
import { createScriptedHost, type ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { timeS, readings } = scriptedCurve(4812, 7.4, 80, 7)
const curve = { timeS, force: readings }
const plain = { chosen: null, seatedLine: false }
const si = quantitiesIn('SI')

let host: ScriptedHost
beforeEach(() => {
  host = createScriptedHost()
  host.addBreak(4812)
})
const record = () => host.breaks[0]!

describe('what is said of a curve on it', () => {
  it('is the peak of the evaluation in force, in the units of the program, and the rated load', () => {
    const { marks, levels } = sceneInForce(record(), curve, plain, si)
    expect(marks).toContainEqual(
      expect.objectContaining({ shape: 'peak', value: 4812, label: expect.stringMatching(/^peak 4812.N$/) }),
    )
    expect(levels).toEqual([expect.objectContaining({ value: 20_000 })])
    const inPounds = sceneInForce(record(), curve, plain, quantitiesIn('US')).marks
    expect(inPounds).toContainEqual(expect.objectContaining({ shape: 'peak', label: expect.stringContaining('lbf') }))
  })

  it('is a word of a person beside the peak found', async () => {
    await host.handlers['breaks.pickPeak']({ breakId: 1, timeS: 8.6, by: 'bench 1', reason: 'a spike' })
    const { marks } = sceneInForce(record(), curve, plain, si)
    expect(marks[0]).toMatchObject({ shape: 'word', timeS: 8.6 })
    expect(marks.filter(({ shape }) => shape === 'peak')).toHaveLength(1)
  })

  it('is nothing while no evaluation is there', () => {
    const bare = { ...record(), evaluations: [], inForceId: null }
    expect(sceneInForce(bare, curve, plain, si)).toMatchObject({ marks: [], levels: [], band: null })
  })

  it('has no rated load where no scale makes forces', () => {
    const { header, evaluations, ...rest } = record()
    const none = { kind: 'none' } as const
    const counts = {
      ...rest,
      header: { ...header, scale: none },
      evaluations: evaluations.map((one) => ({ ...one, scale: none })),
    }
    expect(isInCounts(counts)).toBe(true)
    expect(isInCounts(record())).toBe(false)
    expect(sceneInForce(counts, curve, plain, si).levels).toEqual([])
  })
})
