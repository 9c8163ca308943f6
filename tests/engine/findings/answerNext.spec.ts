import { expect, test } from 'vitest'
import { nextAnswer, nextQuestion } from '#contract/findings/next.ts'
import { scriptedFindings } from '#tests/fakes/scripted/scriptedFindings.ts'

const ask = (question: object = {}) => scriptedFindings()['findings.next']!(nextQuestion.parse(question))

test('tells what is due, what the shelf can show, which groups are undecided and which results are odd', async () => {
  const answer = await ask()
  expect(nextAnswer.parse(answer)).toEqual(answer)
  expect(answer.shelf).toHaveLength(8)
  expect(answer.references).toEqual(['resorcinol R2'])
  expect(answer.compared).toBe(2 * 3 * 4)
  expect(answer.undecided.every(({ n, needed }) => n < needed)).toBe(true)
  expect(answer.due.every(({ state }) => ['soon', 'due', 'late', 'missed'].includes(state))).toBe(true)
})

test('asks about the chosen adhesive alone, and still holds it against the reference', async () => {
  const answer = await ask({ filter: { adhesives: ['epoxy E4'] } })
  expect(answer.shelf.map(({ adhesive }) => adhesive)).toEqual(['epoxy E4', 'epoxy E4'])
  expect(answer.compared).toBe(2 * 4)
  expect(answer.groups.map(({ adhesive }) => adhesive)).toContain('resorcinol R2')
  const groups = new Map(answer.groups.map((group) => [group.key, group.adhesive]))
  expect(answer.suspicious.every(({ group }) => groups.get(group) === 'epoxy E4')).toBe(true)
})

test('takes the reference that is chosen for that of the study', async () => {
  const { references, undecided, groups } = await ask({ referenceAdhesive: 'epoxy E4' })
  expect(references).toEqual(['epoxy E4'])
  const adhesives = new Map(groups.map((group) => [group.key, group.adhesive]))
  expect(undecided.every(({ reference }) => adhesives.get(reference) === 'epoxy E4')).toBe(true)
})

test('lets the exposure through that is asked after', async () => {
  const { shelf } = await ask({ filter: { exposures: ['bilge'] } })
  expect(shelf).toHaveLength(4)
  expect(shelf.every(({ exposure }) => exposure === 'bilge')).toBe(true)
})
