import { describe, expect, it } from 'vitest'
import type { CalibrationNote } from '#contract/calibration/calibrationNotes.ts'
import { noteSentences } from '#words/calibration/noteWords.ts'

const proposal = { degree: 1, reason: { code: 'exact' }, tried: [] } as const
const words = (...notes: (string | CalibrationNote)[]) =>
  noteSentences({ notes, proposal: { ...proposal, tried: [] } }).join(' ')

describe('noteSentences', () => {
  it.each<[CalibrationNote, RegExp]>([
    [{ code: 'few-runs', runs: 1 }, /is 1 run of increasing force; three are good practice/],
    [{ code: 'few-runs', runs: 2 }, /are 2 runs/],
    [{ code: 'few-steps', steps: 1 }, /is 1 step; five or more/],
    [{ code: 'not-repeated' }, /No step was repeated/],
    [{ code: 'no-decreasing' }, /reversibility is not known/],
    [{ code: 'no-zero-return' }, /zero error is not known/],
    [{ code: 'no-hold' }, /creeps under a load that stays is not known/],
    [{ code: 'no-resolution' }, /resolution of the reading is not known/],
    [{ code: 'left-out', shares: ['weights', 'gravity'] }, /leaves out the weights and local gravity, /],
    [{ code: 'no-range' }, /200 times the resolution: there is no verified range/],
    [{ code: 'steps-below-range', steps: 2 }, /^2 of the steps lie below 200 times the resolution/],
    [{ code: 'far-below-capacity', percent: 2 }, /2\.0 % of the rated load/],
    [{ code: 'no-degrees-of-freedom' }, /as many readings as coefficients/],
    [
      { code: 'degree-chosen', degree: 3 },
      /Degree 3 was chosen; proposed was: Degree 1: it goes through every reading/,
    ],
    [{ code: 'lack-of-fit' }, /lack of fit is significant/],
    [{ code: 'zero-reading', reading: 500 }, /goes through zero, but the reading without load is 500: /],
    [{ code: 'zero-reading', reading: 512 + 14 / 31 }, /the reading without load is 512\.5: /],
  ])('says of %j what it is about', (note, pattern) => expect(words(note)).toMatch(pattern))

  it('repeats what an older record holds as a sentence', () => {
    expect(words('Something was wanting.', { code: 'no-resolution' })).toMatch(
      /^Something was wanting\. The resolution/,
    )
  })
})
