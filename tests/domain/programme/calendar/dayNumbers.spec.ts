import { describe, expect, it } from 'vitest'
import { dayNumbers } from '#domain/programme/calendar/dayNumbers.ts'

const [first, second, third] = ['2031-03-01', '2031-04-01', '2031-05-01'] as const
/** Glue-ups 1, 2, ..., each with the day first entered and that in force. */
const numbersOf = (...days: [firstOn: string, gluedOn: string][]) =>
  Object.fromEntries(dayNumbers(days.map(([firstOn, gluedOn], at) => ({ glueUpId: at + 1, firstOn, gluedOn }))))

describe('the number of a day of glue-up', () => {
  it('is its place among the days in the order in which they were recorded', () => {
    const numbers = numbersOf([second, second], [first, first], [second, second], [third, third])
    expect(numbers).toEqual({ [second]: 0, [first]: 1, [third]: 2 })
  })

  it('stays when a glue-up before it joins another day', () => {
    expect(numbersOf([first, first], [second, first], [third, third])).toEqual({ [first]: 0, [third]: 2 })
  })

  it('goes along with the lowest glue-up of the day, and those that stay behind take one that was never given', () => {
    expect(numbersOf([first, third], [first, first], [second, second])).toEqual({
      [third]: 0,
      [first]: 10_002,
      [second]: 1,
    })
  })

  it('stays with those that stay behind where the lowest glue-up joins a day that has one', () => {
    expect(numbersOf([first, first], [second, first], [second, second])).toEqual({ [first]: 0, [second]: 1 })
  })

  it('is traded by two days that are corrected crosswise', () => {
    expect(numbersOf([first, second], [second, first])).toEqual({ [second]: 0, [first]: 1 })
  })
})
