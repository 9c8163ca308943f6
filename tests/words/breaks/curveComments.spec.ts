import { describe, expect, it } from 'vitest'
import type { BreakRecord } from '#contract/breaks/break.ts'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { curveComments } from '#words/breaks/curveComments.ts'

function stored(change: Partial<BreakRecord['summary']> = {}): BreakRecord {
  const host = createScriptedHost()
  host.addBreak(3000, change)
  return host.breaks[0]!
}

describe('curveComments', () => {
  it('says whose curve it is, under which scale and zero', () => {
    const comments = curveComments(stored()).join('\n')
    expect(comments).toMatch(
      /^break \d+, specimen .*, started \d{4}-.*\nsource .*\nscale: .*\ntare: .*\nending: complete/,
    )
  })
  it('says whose word the peak is, where and why, on one line', () => {
    const recordedAt = '2031-04-06T08:00:00.000Z'
    const reason = 'the wedge\nlet go first'
    const overruled = { kind: 'peak-picked', timeS: 0.45, by: 'bench', foundPeakN: 6000, recordedAt, reason } as const
    expect(curveComments(stored({ overruled, peakN: 3000 }))).toContain(
      'peak picked by hand at 0.45 s, 3000 N, by bench: the wedge let go first',
    )
  })
  it('says that it is simulated, of the demo and of a virtual break of a person’s own block', () => {
    for (const made of [{ demo: true }, { simulated: true }])
      expect(curveComments(stored(made))).toContain('simulated: every number is invented')
    expect(curveComments(stored({ demo: false, simulated: false })).join()).not.toContain('invented')
  })
})
