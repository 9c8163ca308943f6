import { describe, expect, it } from 'vitest'
import { climatePanel } from '#figures/findings/climate/climatePanel.ts'
import { quantitiesIn } from '#words/units/quantities.ts'
import { climateAxis, madePanel } from './madeClimate.ts'

const size = { widthPx: 700, emPx: 12 }
const draw = (change = {}) => climatePanel(madePanel(change), size)
const inks = (change = {}) => draw(change).marks.map(({ kind, ...mark }) => ('ink' in mark ? mark.ink : kind))
const count = (all: readonly string[], ink: string) => all.filter((one) => one === ink).length

describe('one quantity of the air over time', () => {
  it('is a line of means in a band from lowest to highest, interrupted at a gap', () => {
    const lines = draw({ keys: false }).marks.filter((mark) => mark.kind === 'line' && mark.ink === 'joined')
    expect(lines.map((mark) => (mark.kind === 'line' ? mark.through.length : 0))).toEqual([301, 390])
    expect(count(inks({ keys: false }), 'shade')).toBe(2)
    expect(count(inks({ keys: false }), 'gap')).toBe(1)
    expect(count(inks({ keys: false, gaps: [] }), 'shade')).toBe(1)
  })

  it('marks the days on which blocks were glued or broken, those on which they are to leave in another way, and none outside', () => {
    expect(count(inks({ keys: false }), 'limit')).toBe(2)
    expect(count(inks({ keys: false }), 'centre')).toBe(1)
    expect(count(inks({ keys: false, days: [{ timeS: 0, name: 'long ago' }] }), 'limit')).toBe(0)
  })

  it('says below what its forms stand for, of those that it has', () => {
    const texts = (change = {}) => draw(change).marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
    expect(texts()).toEqual(
      expect.arrayContaining(['mean', 'lowest to highest', 'no readings', 'blocks glued or broken', 'pull to come']),
    )
    expect(texts({ gaps: [], days: [] })).not.toContain('no readings')
    expect(texts({ days: [{ timeS: climateAxis.fromS, name: 'first block glued' }] })).not.toContain('pull to come')
    expect(texts({ keys: false })).not.toContain('mean')
  })

  it('is read at no more places than keys can go through', () => {
    const { readings } = draw()
    expect(readings.length).toBeLessThanOrEqual(60)
    expect(readings[0]!.words).toBe('1 Jan 2026: 0.0\u00a0°C, from −4.0\u00a0°C to 5.0\u00a0°C')
  })

  it('is in the units of the person', () => {
    const { temperature } = quantitiesIn('US')
    expect(draw({ quantity: temperature }).readings[0]!.words).toContain('32.0\u00a0°F')
    expect(draw({ quantity: temperature }).description).toMatch(/the temperature was 24\.8\u00a0°F to 77\.0\u00a0°F/)
  })
})
