import { describe, expect, it } from 'vitest'
import { curveEventKind } from '#contract/breaks/evaluation.ts'
import { madeEvent } from '#tests/fakes/madeEvents.ts'
import { eventMeaning } from '#words/breaks/eventMeaning.ts'

describe('meaning of an event', () => {
  it.each(curveEventKind.options)('is one whole sentence for %s, with figures and without', (kind) => {
    const bare = eventMeaning(madeEvent({ kind }))
    const full = eventMeaning(
      madeEvent({
        kind,
        dropPercent: 11.2,
        percentOfPeak: 62.4,
        cycles: 4,
        dropN: 420,
        fromN: 3800,
        manner: 'brittle',
      }),
    )
    for (const sentence of [bare, full]) {
      expect(sentence).toMatch(/^[A-Z][^.!?]+\.$/)
      expect(sentence).not.toMatch(/null|undefined|NaN|\bN\b|MPa|\bs\b/)
      expect(sentence).not.toMatch(/ {2}| [,.:;]/)
    }
    expect(bare).not.toMatch(/\d/)
  })

  it('says nothing of the bond for certain', () => {
    for (const kind of ['pop-in', 'stick-slip', 'plateau', 'hold', 'reload'] as const)
      expect(eventMeaning(madeEvent({ kind }))).toContain(' may ')
  })

  it('names what else may look like it where a load curve alone cannot tell', () => {
    for (const kind of ['pop-in', 'stick-slip'] as const)
      expect(eventMeaning(madeEvent({ kind }))).toContain('moved in the fixture')
    expect(eventMeaning(madeEvent({ kind: 'plateau' }))).toContain('not driven on')
  })

  it('has the share of the peak, the drop and the cycles in it', () => {
    const popIn = eventMeaning(madeEvent({ kind: 'pop-in', percentOfPeak: 62.4, dropPercent: 6.03 }))
    expect(popIn).toMatch(/^One early drop at 62 % of the peak, by 6 %: /)
    const slip = eventMeaning(madeEvent({ kind: 'stick-slip', cycles: 7, dropPercent: 9.96 }))
    expect(slip).toMatch(/recovered 7 times, by 10 % at most/)
    expect(eventMeaning(madeEvent({ kind: 'hold', percentOfPeak: 55, dropPercent: 2.34 }))).toContain(
      'held at 55 % of the peak, relaxed by 2.3 %',
    )
    expect(eventMeaning(madeEvent({ kind: 'hold', percentOfPeak: 55, dropPercent: 0.2 }))).not.toContain('relaxed')
    expect(eventMeaning(madeEvent({ kind: 'reload', percentOfPeak: 48, dropPercent: 61 }))).toContain(
      'let down from 48 % of the peak by 61 %',
    )
    expect(eventMeaning(madeEvent({ kind: 'plateau', percentOfPeak: 98.7 }))).toContain('99 % of the peak')
  })

  it('tells a brittle final drop from a progressive one, and from one that cannot be told', () => {
    const manners = (['brittle', 'progressive', null] as const).map((manner) =>
      eventMeaning(madeEvent({ kind: 'final-drop', manner })),
    )
    expect(new Set(manners).size).toBe(3)
    expect(manners[0]).toContain('all at once')
    expect(manners[1]).toContain('in steps or slowly')
    expect(manners[2]).toContain('too far apart')
  })
})
