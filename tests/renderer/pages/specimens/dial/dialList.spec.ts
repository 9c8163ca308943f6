import { expect, it } from 'vitest'
import type { NumberedSpecimen } from '#contract/programme/labelProcedures.ts'
import { readDialLines } from '#renderer/pages/specimens/dial/dialLines.ts'
import { judgeLines } from '#renderer/pages/specimens/dial/dialList.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const quantities = quantitiesIn('SI')
const specimen = (number: string, change: Partial<NumberedSpecimen> = {}): [string, NumberedSpecimen] => [
  number,
  { number, found: { kind: 'specimen', specimenId: Number(number), number }, areaMm2: 600, timesBroken: 0, ...change },
]
const judged = (text: string, ...known: [string, NumberedSpecimen][]) =>
  judgeLines(readDialLines(text, quantities.force), new Map(known), quantities, '2031-12-31')

it('gives the strength that follows from the area of the specimen', () => {
  // 4800 N / 600 mm2 = 8 MPa
  expect(judged('28; 4800', specimen('28'))).toEqual([
    expect.objectContaining({ specimenId: 28, strengthMPa: 8, error: null, questions: [] }),
  ])
})

it('asks about a specimen that broke before, one that stands twice, and a strength that is hardly one', () => {
  const known = [specimen('28', { timesBroken: 1 }), specimen('36')]
  const [first, second, third] = judged('28; 4800\n28; 4700\n36; 480 kN', ...known)
  expect(first!.questions).toEqual([expect.stringContaining('broke already')])
  expect(second!.questions).toEqual([expect.stringContaining('Line 1'), expect.stringContaining('already')])
  expect(third!.questions).toEqual([expect.stringContaining('Is that right?')])
})

it('asks about a break on a day that is still to come', () => {
  const [today, tomorrow] = judged('28; 4800; 2031-12-31\n36; 4700; 2032-01-01', specimen('28'), specimen('36'))
  expect([today!.questions, tomorrow!.questions]).toEqual([[], [expect.stringContaining('still to come')]])
})

it('knows no specimen before the archive has answered, and says where there is none', () => {
  const [waiting] = judged('28; 4800')
  expect(waiting).toMatchObject({ specimenId: null, error: null })
  const [none] = judged('29; 4800', specimen('29', { found: { kind: 'none', wrongCheck: true, nearest: ['28'] } }))
  expect(none).toMatchObject({ specimenId: null, error: expect.stringContaining('28') })
})
