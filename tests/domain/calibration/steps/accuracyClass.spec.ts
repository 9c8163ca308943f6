import { describe, expect, it } from 'vitest'
import {
  classLimits,
  classOfAll,
  classOfStep,
  classRanges,
  limitingErrors,
} from '#domain/calibration/steps/accuracyClass.ts'

const none = { q: null, b: null, v: null, f0: null, a: null }

describe('accuracy class', () => {
  it('has the limits of the ISO 7500-1 table', () => {
    // ISO 7500-1, class table, from memory: q, b, v, f0, a in percent. Looked for in public copies of ISO 7500-1:2018, OIML R 65:2006 and
    // guides to both, and not found: only their first pages are public. A check against the program's own table alone, therefore,
    // and against the pattern that the table is remembered to have.
    const table = classLimits.map((limits) => [limits.class, limits.q, limits.b, limits.v, limits.f0, limits.a])
    expect(table).toEqual([
      ['0.5', 0.5, 0.5, 0.75, 0.05, 0.25],
      ['1', 1, 1, 1.5, 0.1, 0.5],
      ['2', 2, 2, 3, 0.2, 1],
      ['3', 3, 3, 4.5, 0.3, 1.5],
    ])
  })

  it('has limits that stand in one ratio to that of q in every class', () => {
    // As remembered: b = q, v = 1.5 q, f0 = q/10, a = q/2; and q is what the class is called.
    for (const { class: name, q, b, v, f0, a } of classLimits) {
      expect(q).toBe(Number(name))
      expect([b / q, v / q, f0 / q, a / q].map((ratio) => Number(ratio.toFixed(9)))).toEqual([1, 1.5, 0.1, 0.5])
    }
  })

  it('is the best one whose limits all errors keep, either way', () => {
    expect(classOfStep({ q: -0.5, b: 0.5, v: -0.75, f0: 0.05, a: 0.25 })).toBe('0.5')
    expect(classOfStep({ q: -0.51, b: 0.5, v: 0.75, f0: 0.05, a: 0.25 })).toBe('1')
    expect(classOfStep({ q: 0.1, b: 0.1, v: 0.1, f0: -0.15, a: 0.1 })).toBe('2')
    expect(classOfStep({ q: 0.1, b: 0.1, v: 4.4, f0: 0, a: 0.1 })).toBe('3')
    expect(classOfStep({ q: 0.1, b: 3.1, v: 0, f0: 0, a: 0.1 })).toBe('none')
  })

  it('is judged by what was measured, but never without q', () => {
    expect(classOfStep({ ...none, q: 0.2 })).toBe('0.5')
    expect(classOfStep({ ...none, b: 0.2 })).toBe('none')
  })

  it('is kept from the next better one by the errors above its limits', () => {
    // Against the table above: 2.4 % is more than the 2 % of class 2, 0.25 % more than its 0.2 %.
    const errors = { ...none, q: 0.2, b: 2.4, f0: 0.25 }
    expect(limitingErrors({ ...errors, class: classOfStep(errors) })).toEqual(['b', 'f0'])
    expect(limitingErrors({ ...none, q: 3.5, class: 'none' })).toEqual(['q'])
    expect(limitingErrors({ ...none, q: 0.5, class: '0.5' })).toEqual([])
  })

  it('of all steps is that of the worst', () => {
    expect(classOfAll([{ class: '0.5' }, { class: '2' }, { class: '1' }])).toBe('2')
    expect(classOfAll([{ class: '0.5' }, { class: 'none' }])).toBe('none')
    expect(classOfAll([])).toBe('none')
  })

  it('holds over the range above the last step that misses it', () => {
    const steps = [
      { forceN: 20, class: 'none' },
      { forceN: 50, class: '2' },
      { forceN: 200, class: '0.5' },
      { forceN: 100, class: '1' },
      { forceN: 150, class: '0.5' },
    ] as const
    expect(classRanges(steps)).toEqual([
      { class: '0.5', fromN: 150, toN: 200 },
      { class: '1', fromN: 100, toN: 200 },
      { class: '2', fromN: 50, toN: 200 },
    ])
    expect(classRanges([{ forceN: 10, class: 'none' }])).toEqual([])
    expect(classRanges([])).toEqual([])
  })
})

describe('a limit of a class', () => {
  it('is kept by an error that is the limit but for its last digits, and by no other', () => {
    expect(classOfStep({ ...none, q: 0.5000000000000001 })).toBe('0.5')
    expect(classOfStep({ ...none, q: 0.5 + 2e-9 })).toBe('1')
  })

  it('is one for a single step too', () => {
    expect(classOfAll([{ class: '1' }])).toBe('1')
    expect(
      classRanges([
        { forceN: 10, class: '0.5' },
        { forceN: 20, class: '0.5' },
      ]),
    ).toEqual([{ class: '0.5', fromN: 10, toN: 20 }])
  })
})
