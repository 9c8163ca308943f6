import { describe, expect, expectTypeOf, it } from 'vitest'
import type { Procedure } from '#contract/procedure.ts'
import { type ProcedureName, procedures, type QuestionName } from '#contract/procedures.ts'
import { topic } from '#contract/topics.ts'

const all = Object.entries(procedures) as [ProcedureName, Procedure][]

describe('a procedure', () => {
  it('either asks, and names what it reads, or does something', () => {
    const asks = all.filter(([, procedure]) => 'reads' in procedure).map(([name]) => name)
    expect(all.filter(([, { kind }]) => kind === 'question').map(([name]) => name)).toEqual(asks)
    expectTypeOf<'breaks.get'>().toExtend<QuestionName>()
    expectTypeOf<'breaks.assess'>().not.toExtend<QuestionName>()
  })

  it('must name what it reads, or that it does something, before it compiles', () => {
    const { input, output } = procedures['weights.list']
    expectTypeOf<{ input: typeof input; output: typeof output }>().not.toExtend<Procedure>()
    expectTypeOf<{ kind: 'question'; input: typeof input; output: typeof output }>().not.toExtend<Procedure>()
  })
})

describe('what is read', () => {
  const { 'breaks.get': get, 'comparison.make': compare, 'reevaluations.changes': changes } = procedures

  it('is one record where one is asked for', () => {
    expect(get.reads({ breakId: 3 })).toEqual(['break 3'])
    expect(procedures['breaks.curve'].reads({ breakId: 3, fromS: null, toS: null, maxPoints: null })).toEqual([
      'curve 3',
    ])
  })

  it('are the results that are compared, not what is noted of them', () => {
    expect(compare.reads({ breakIds: [3, 1], alignAt: 'peak', normalising: 'no' })).toEqual(['result 3', 'result 1'])
  })

  it('is made of topics', () => {
    const read = changes.reads(changes.input.parse({ reevaluationId: 2 }))
    expect(read.map((one) => topic.parse(one))).toEqual(['reevaluation 2', 'results'])
  })
})
