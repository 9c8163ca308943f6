import { describe, expect, it } from 'vitest'
import { climatePanel } from '#figures/findings/climate/climatePanel.ts'
import { storedStrength } from '#figures/findings/climate/storedStrength.ts'
import { quantitiesIn } from '#words/units/quantities.ts'
import { climateAxis, madePanel, madeSeries } from './madeClimate.ts'

const size = { widthPx: 700, emPx: 12 }
const { strength } = quantitiesIn('SI')
const draw = (series = madeSeries) =>
  storedStrength({ series, axis: climateAxis, name: 'casein C1', days: madePanel().days }, strength, size)

describe('strength under the climate', () => {
  it('has a mean at each age with its interval, where there is one', () => {
    const { marks, readings, description } = draw()
    expect(readings.map(({ words }) => words)).toEqual([
      '0 months old: mean 9.40\u00a0MPa of 12 blocks (95 % interval 8.90 to 9.90\u00a0MPa), broken about 22 Jan 2026',
      expect.stringContaining('6 months old'),
      expect.stringMatching(/of 1 block, broken/),
    ])
    expect(marks.filter((mark) => mark.kind === 'rule' && mark.ink === 'spread')).toHaveLength(2)
    expect(description).toContain('casein C1. 0 months old')
  })

  it('stands on the same axis as the climate above it', () => {
    const panel = climatePanel(madePanel(), size)
    const days = (marks: (typeof panel)['marks']) =>
      marks.flatMap((mark) => (mark.kind === 'rule' && mark.ink === 'limit' ? [mark.from.x] : []))
    expect(days(draw().marks)).toContain(days(panel.marks)[0])
  })

  it('says so where no block counts', () => {
    expect(draw({ ...madeSeries, ages: [] }).description).toBe('No block of casein C1 counts.')
  })
})
