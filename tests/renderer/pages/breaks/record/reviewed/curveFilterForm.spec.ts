import { describe, expect, it } from 'vitest'
import { curveFilter } from '#contract/breaks/curveFilter.ts'
import {
  filterNames,
  firstDraft,
  readFilter,
  readWindow,
} from '#renderer/pages/breaks/record/reviewed/curveFilterForm.ts'

describe('readFilter', () => {
  it('reads every filter of the list into one that the program knows', () => {
    for (const { kind } of filterNames) {
      const { filter, error } = readFilter({ ...firstDraft(80), kind })
      expect(error).toBeNull()
      if (kind === 'none') expect(filter).toBeNull()
      else expect(curveFilter.parse(filter)).toEqual(filter)
    }
  })
  it('takes milliseconds and a decimal comma', () => {
    const draft = { kind: 'moving-average', cutoffHz: '', windowMs: '12,5' } as const
    expect(readFilter(draft).filter).toEqual({ kind: 'moving-average', windowS: 0.0125 })
  })
  it.each(['', '0', '-3', 'ten'])('says what to write in place of “%s”', (text) => {
    expect(readFilter({ kind: 'butterworth', cutoffHz: text, windowMs: '' }).error).toContain('Hz')
    expect(readFilter({ kind: 'moving-average', cutoffHz: '', windowMs: text }).error).toContain('milliseconds')
  })
})

describe('firstDraft', () => {
  it('suits the sample rate: a tenth of it, and ten samples', () => {
    expect(firstDraft(1000)).toEqual({ kind: 'none', cutoffHz: '100', windowMs: '10' })
  })
})

describe('readWindow', () => {
  it('reads milliseconds, and nothing that is no length of time', () => {
    expect(readWindow('130')).toEqual({ windowS: 0.13 })
    expect(readWindow('0.13 s')).toEqual({ windowS: 0.13 })
    for (const text of ['0', 'x', '', '1,234']) expect(readWindow(text)).toHaveProperty('error')
  })
})
