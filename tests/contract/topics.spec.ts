import { describe, expect, expectTypeOf, it } from 'vitest'
import { isTouched, type Topic, topic, topicsOf } from '#contract/topics.ts'

describe('a topic', () => {
  it.each(['specimens', 'specimen 17', 'break 1', 'weights', 'preferences', 'reevaluation 2'])(
    'may be "%s"',
    (text) => {
      expect(topic.parse(text)).toBe(text)
    },
  )

  it.each([
    '',
    'specimen',
    'specimens 17',
    'specimen 0',
    'specimen 1.5',
    'specimen -1',
    'specimen 1e3',
    'weights 1',
    'blocks',
  ])('is not "%s"', (text) => {
    expect(topic.safeParse(text).success).toBe(false)
  })

  it('is checked by the compiler', () => {
    expectTypeOf<'break 3'>().toExtend<Topic>()
    expectTypeOf<'brake 3'>().not.toExtend<Topic>()
  })
})

describe('the topics of some records', () => {
  it('name each once', () => {
    expect(topicsOf('break', [3, 1, 3])).toEqual(['break 3', 'break 1'])
  })

  it('are none where there are no records', () => {
    expect(topicsOf('break', [])).toEqual([])
  })

  it('speak of all where there are more than 200', () => {
    const numbers = Array.from({ length: 201 }, (_, index) => index + 1)
    expect(topicsOf('break', numbers)).toEqual(['breaks'])
    expect(topicsOf('break', numbers.slice(1))).toHaveLength(200)
  })
})

describe('what was read', () => {
  it.each<[read: Topic[], written: Topic[]]>([
    [['break 17'], ['break 17']],
    [
      ['break 3', 'break 17'],
      ['specimen 1', 'break 17'],
    ],
    [['breaks'], ['break 17']],
    [['break 17'], ['breaks']],
    [['breaks'], ['breaks']],
    [['weights'], ['weights']],
  ])('%j is touched by %j', (read, written) => {
    expect(isTouched(read, written)).toBe(true)
  })

  it.each<[read: Topic[], written: Topic[]]>([
    [['break 17'], ['break 1']],
    [['break 1'], ['break 17']],
    [['break 17'], ['specimen 17']],
    [['breaks'], ['specimens']],
    [['break 17'], []],
    [[], ['breaks', 'preferences']],
    [['weights'], ['preferences']],
  ])('%j is not touched by %j', (read, written) => {
    expect(isTouched(read, written)).toBe(false)
  })
})
