import { describe, expect, it } from 'vitest'
import { defaultPractices } from '#contract/settings/practice.ts'
import { practiceWords } from '#words/settings/practiceWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const SI = quantitiesIn('SI')

describe('practiceWords', () => {
  it('says what is asked for with its units, and nothing of what is open', () => {
    expect(practiceWords(defaultPractices[0]!, SI)).toBe('time to failure 5 to 60 s; sampling bound at most 1 %')
    expect(practiceWords(defaultPractices[2]!, SI)).toContain('speed of the moving head 45 to 55 mm/min')
    const exact = { ...defaultPractices[2]!, speedMmPerMin: { least: 50, most: 50 } }
    expect(practiceWords(exact, SI)).toContain('speed of the moving head 50 mm/min')
  })
})
