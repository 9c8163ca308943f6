import { expect, test } from 'vitest'
import {
  ageingQuestionOf,
  firstSettings,
  inOrder,
  kindsFor,
  nextQuestionOf,
  readMargin,
  treatmentOf,
  treatmentOfMeans,
  typedChange,
  typedFactor,
  typedLimit,
  typedShare,
  typedYears,
  withReferenceOf,
} from '#renderer/pages/findings/findingsQuestions.ts'

test('puts groups in the order of their means, without those that have none', () => {
  const means: Record<string, number | null> = { a: 5, b: null, c: 9 }
  expect(inOrder(['a', 'b', 'c'], (group) => means[group]!)).toEqual(['c', 'a'])
})

test('reads limits and factors as they are typed, and takes none that cannot be one', () => {
  expect(['75', '62,5', '0', '101', '', 'x'].map(typedLimit)).toEqual([75, 62.5, null, null, null, null])
  expect(['0', '0.5', '-1', ''].map(typedFactor)).toEqual([0, 0.5, null, null])
})

test('treats torn wood by the usual numbers where none is typed', () => {
  expect(treatmentOf({ ...firstSettings, limitPercent: '', adjustFactor: '0,3' })).toEqual({
    woodFailure: 'observed',
    limitPercent: 75,
    adjustFactor: 0.3,
  })
})

test('calls means censored nowhere, for they are as observed, and asks censored fits of the ages alone', () => {
  const censored = { ...firstSettings, woodFailure: 'censored' } as const
  expect(treatmentOf(censored).woodFailure).toBe('observed')
  expect(treatmentOf({ ...censored, asked: 'changed' }).woodFailure).toBe('censored')
  expect(treatmentOfMeans({ ...censored, asked: 'changed' }).woodFailure).toBe('observed')
})

test('asks of ages what can be read of the fields, and what is usual else', () => {
  const asked = (sharePercent: string, atYears: string) => {
    const question = ageingQuestionOf({ ...firstSettings, sharePercent, atYears })
    return [question.sharePercent, question.atMonths]
  }
  expect(asked('70', '2.5')).toEqual([70, 30])
  expect(asked('62,5', '2,5')).toEqual([62.5, 30])
  expect(asked('', '')).toEqual([80, null])
  expect(asked('100', '200')).toEqual([80, null])
  expect(asked('much', 'long')).toEqual([80, null])
})

test.each([
  ['10', 10],
  ['12,5', 12.5],
  ['7.5 %', 7.5],
])('reads the margin %s', (text, percent) => {
  expect(readMargin(text)).toEqual({ percent, error: null })
})

test.each(['ten', '', '0', '-5', '140', '5 N'])(
  'says at once that “%s” is no margin, and asks nothing with it',
  (text) => {
    const { percent, error } = readMargin(text)
    expect(percent).toBeNull()
    expect(error).toMatch(/^.+\.$/)
  },
)

test('asks what to do next by what can be read of the fields, and what is usual else', () => {
  const asked = (changePercent: string, marginPercent: string, referenceAdhesive = '') => {
    const question = nextQuestionOf({ ...firstSettings, changePercent, marginPercent, referenceAdhesive })
    return [question.changePercentPerYear, question.marginPercent, question.referenceAdhesive]
  }
  expect(asked('0.5', '15', 'epoxy E4')).toEqual([0.5, 15, 'epoxy E4'])
  expect(asked('', '')).toEqual([1, 10, null])
  expect(asked('0', '900')).toEqual([1, 10, null])
})

test('reads shares, years and changes as they are typed, and takes none that cannot be one', () => {
  expect(['80', '62,5', '0', '100', '', 'x'].map(typedShare)).toEqual([80, 62.5, null, null, null, null])
  expect(['30', '0', '101', ''].map(typedYears)).toEqual([30, null, null, null])
  expect(['1', '0,5', '0', '101', ''].map(typedChange)).toEqual([1, 0.5, null, null, null])
})

test('asks for the notes on what answers a question, and not for those on every kind, which would all be worked out for it', () => {
  for (const kinds of Object.values(kindsFor)) expect(kinds).not.toContain('note')
})

test('holds adhesives against the reference of the study until another is chosen, where it has results', () => {
  const study = { fields: { referenceAdhesive: 'R2' } } as Parameters<typeof withReferenceOf>[0]
  const chosen = { ...firstSettings, overall: { ...firstSettings.overall, reference: 'E4' } }
  const of = (settings: typeof firstSettings, adhesives: readonly string[]) =>
    withReferenceOf(study, settings, adhesives).overall.reference
  expect([of(firstSettings, ['E4', 'R2']), of(firstSettings, ['E4']), of(chosen, ['E4', 'R2'])]).toEqual([
    'R2',
    '',
    'E4',
  ])
  expect(withReferenceOf(undefined, firstSettings, ['R2'])).toBe(firstSettings)
})
