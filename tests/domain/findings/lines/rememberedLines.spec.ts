import { describe, expect, it } from 'vitest'
import { findingsOptions } from '#contract/findings/options.ts'
import { findingLines, findingUnits } from '#domain/findings/lines/findingLines.ts'
import { rememberLines } from '#domain/findings/lines/rememberedLines.ts'
import type { Observation } from '#domain/findings/observation.ts'
import { block, handbookGroups } from '../knownStudies.ts'

const groups = handbookGroups.length
const observations: Observation[] = handbookGroups.flatMap(({ group, values }) =>
  [...values].map((strengthMPa, i) =>
    block({ group, strengthMPa, ageMonths: i % 2 === 0 ? 0 : 12, woodFailurePercent: 0 }),
  ),
)
const options = findingsOptions.parse({})
const asked = (from: readonly Observation[], memory = rememberLines()) =>
  memory.linesOf(findingUnits(from, options), () => {})

describe('findings asked for again', () => {
  it('are the lines that are worked out one after the other', () => {
    expect(asked(observations).lines).toEqual([...findingLines(observations, options)])
  })

  it('are not worked out where nothing changed', () => {
    const memory = rememberLines()
    const first = asked(observations, memory)
    // notes of simulation, each group at two ages, two ages, each group over its ages
    expect(first.computed).toBe(1 + 2 * groups + 2 + groups)
    expect(asked(observations, memory)).toEqual({ lines: first.lines, computed: 0 })
  })

  it('are worked out anew where a block changed: its cell, its age, its series', () => {
    const memory = rememberLines()
    asked(observations, memory)
    const changed = observations.map((one, i) => (i === 0 ? { ...one, strengthMPa: one.strengthMPa + 1 } : one))
    const again = asked(changed, memory)
    expect(again.computed).toBe(3)
    expect(again.lines).toEqual([...findingLines(changed, options)])
  })

  it('are worked out for its cell alone where only the name of a block changed', () => {
    const memory = rememberLines()
    asked(observations, memory)
    const renamed = observations.map((one, i) => (i === 0 ? { ...one, specimen: 'another' } : one))
    expect(asked(renamed, memory).computed).toBe(1)
  })

  it('say after each part how far they are', () => {
    const heard: number[] = []
    const units = findingUnits(observations, options)
    rememberLines().linesOf(units, (done) => heard.push(done))
    expect(heard).toEqual(units.map((_, i) => i + 1))
  })
})
