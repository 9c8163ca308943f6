import { describe, expect, it } from 'vitest'
import { benchPhase } from '#contract/bench/bench.ts'
import { phaseWords, tareHindrance } from '#words/bench/phaseWords.ts'
import { createScriptedHost } from '../../fakes/scripted/scriptedHost.ts'

const host = createScriptedHost()
host.addBreak(4812)
const bench = host.bench()
const force = (forceN: number) => `${forceN} N`

describe('phaseWords', () => {
  it('says every phase in words of its own', () => {
    const titles = benchPhase.options.map((phase) => phaseWords({ ...bench, phase }, force).title)
    expect(new Set(titles).size).toBe(benchPhase.options.length)
  })
  it('names the load at which it broke', () => {
    expect(phaseWords({ ...bench, phase: 'broke' }, force).title).toBe('Broke at 4812 N')
  })
  it('says that nothing is recorded while recording is off', () => {
    expect(phaseWords({ ...bench, phase: 'waiting', armed: false }, force)).toEqual({
      title: 'Recording is off',
      advice: 'Loads are shown but not recorded.',
    })
  })
  it('says that no break is looked for while known weights are hung', () => {
    const busy = { ...bench, phase: 'waiting', busyWith: 'calibration' } as const
    expect(phaseWords(busy, force).title).toBe('Calibrating')
    expect(phaseWords({ ...busy, busyWith: 'check-weight' }, force).advice).toContain('No break is recorded')
    expect(tareHindrance(busy)).toBe('known weights are being hung')
  })
  it('says why there is no zero yet', () => {
    const settling = { ...bench, phase: 'settling' } as const
    expect(phaseWords(settling, force).advice).toBe('Leave the bench unloaded until the reading is steady.')
    const signal = { ...bench.signal, unstableBecause: 'the converter stands at the end of its range' }
    expect(phaseWords({ ...settling, signal }, force).advice).toBe(
      'Leave the bench unloaded until there is one: the converter stands at the end of its range.',
    )
  })
  it('tells a lost device from one that sends nothing', () => {
    const lost = { ...bench, phase: 'no-signal', connection: { ...bench.connection, status: 'lost' } } as const
    expect(phaseWords(lost, force).title).toBe('Connection lost')
    expect(phaseWords({ ...bench, phase: 'no-signal' }, force).title).toBe('No readings')
  })
  it('claims nothing of bytes where no reading arrives: what does arrive is said by the connection', () => {
    const problem = { code: 'not-readable', message: 'Bytes arrive, but none is a line.', hint: '' } as const
    const mute = { ...bench, phase: 'no-signal', connection: { ...bench.connection, problem } } as const
    expect(phaseWords(mute, force).advice).toBe('The amplifier is connected, but no reading arrives.')
  })
})

describe('tareHindrance', () => {
  it('is null when the signal is steady, and a reason when it is not', () => {
    expect(tareHindrance({ ...bench, phase: 'waiting' })).toBeNull()
    expect(tareHindrance({ ...bench, phase: 'loading' })).toBe('a specimen is being loaded')
    const shaking = { ...bench, phase: 'waiting', signal: { ...bench.signal, unstableBecause: 'it drifts' } } as const
    expect(tareHindrance(shaking)).toBe('it drifts')
  })
})
