import { describe, expect, it } from 'vitest'
import { agesText, openForNextAge, readAges } from '#renderer/pages/programme/studies/plan/ageText.ts'

describe('ages that are typed', () => {
  it.each([
    ['0, 6, 12', [0, 6, 12]],
    ['0 6 12', [0, 6, 12]],
    ['0; 6 months; 2 years', [0, 6, 24]],
    ['0,6,30y', [0, 6, 360]],
    ['3\n9', [3, 9]],
  ])('"%s" are read', (text, ages) => {
    expect(readAges(text)).toEqual({ agesMonths: ages, error: null, question: null })
  })

  it('out of order are put in order, and that is said', () => {
    expect(readAges('0, 12, 6')).toEqual({
      agesMonths: [0, 6, 12],
      error: null,
      question: '6 stands after 12: ages are kept in rising order.',
    })
  })

  it('twice are kept once, and that is said', () => {
    expect(readAges('0, 6, 6')).toMatchObject({ agesMonths: [0, 6], question: '6 stands twice: it is kept once.' })
  })

  it.each(['soon', '1.5', '-3', '101 years', '6 weeks'])('"%s" is no age', (text) => {
    expect(readAges(`0, ${text}`).error).toContain(`“${text}” is no age`)
  })

  it('are asked for where there is none', () => {
    expect(readAges(' , ').error).toBe('Write at least one age.')
  })

  it('are followed by the next one after Enter, which goes on where none was typed since', () => {
    expect(['0', '0, 2 years ', '0, ', ' 3;', ''].map(openForNextAge)).toEqual([
      '0, ',
      '0, 2 years, ',
      null,
      null,
      null,
    ])
  })

  it('stand in the field as they were kept', () => {
    expect(readAges(agesText([0, 6, 360])).agesMonths).toEqual([0, 6, 360])
  })
})
