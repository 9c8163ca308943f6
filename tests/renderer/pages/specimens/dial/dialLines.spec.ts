import { describe, expect, it } from 'vitest'
import { readDialLines } from '#renderer/pages/specimens/dial/dialLines.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { force } = quantitiesIn('SI')
const only = (text: string) => readDialLines(text, force)[0]
const full = {
  ...{ number: '28', peakN: 4800, woodFailurePercent: 75, failurePattern: 'CF' },
  ...{ brokenOn: '2031-05-02', note: 'slipped' },
}

describe('a line', () => {
  it.each([
    '28; 4800; 75 %; CF; 2031-05-02; slipped',
    '28\t4800 N\t75\tcf\t2031-05-02\tslipped',
    '28, 4,8 kN, 75, CF, 2031-05-02, slipped',
    '28 4800 N 75 % CF 2031-05-02 slipped',
    '28; 4800; 2031-05-02; ; CF; 75; slipped',
  ])('is read as %j', (text) => expect(only(text)).toEqual({ line: 1, kind: 'read', said: full }))

  it('needs no more than a number and a load', () => {
    expect(only('C1-LL-03; 1079 lbf')).toMatchObject({
      kind: 'read',
      said: { number: 'C1-LL-03', brokenOn: null, note: '' },
    })
    // NIST SP 811: 1 lbf = 4.448 221 615 260 5 N
    expect((only('a; 1 lbf') as { said: { peakN: number } }).said.peakN).toBeCloseTo(4.4482216152605, 10)
  })

  it.each([
    ['28', 'a load are needed'],
    ['28; ', 'a load are needed'],
    ['28; many', 'is not a number'],
    ['28; 4,800', 'may be 4.8 or 4800'],
    ['28; 4800 mm', 'unit that does not fit'],
    ['28; 0', 'above 0'],
    ['28; 4800; 130 %', 'no wood failure'],
    ['28; 4800; 75; 80', 'another way'],
    ['28; 4800; 2.5.2031', 'year-month-day'],
    ['28; 4800; 2031-02-30', 'year-month-day'],
    ['28; 4800; XX; 75', 'no failure pattern'],
    [`${'2'.repeat(300)}; 4800`, 'too long'],
  ])('that says %j is questioned', (text, words) =>
    expect(only(text)).toMatchObject({ kind: 'wrong', error: expect.stringContaining(words) }),
  )
})

it('counts lines as they stand, and passes over empty ones and headings', () => {
  const lines = readDialLines('Number; Load\r\n\r\n28; 4800\n29; 4900\n', force)
  expect(lines.map(({ line }) => line)).toEqual([3, 4])
})

it('reads a load without a unit in that of the program', () => {
  const [line] = readDialLines('28; 100', quantitiesIn('US').force)
  // 100 lbf = 444.822 N (NIST SP 811)
  expect((line as { said: { peakN: number } }).said.peakN).toBeCloseTo(444.822, 3)
})
