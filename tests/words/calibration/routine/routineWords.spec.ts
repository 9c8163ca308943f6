import { describe, expect, it } from 'vitest'
import type { RoutineState } from '#contract/calibration/calibrationRoutine.ts'
import { changeWords, orderOf, placeWords, progressWords } from '#words/calibration/routine/routineWords.ts'
import { createScriptedHost } from '../../../fakes/scripted/scriptedHost.ts'

async function after(taken: number, change: Partial<RoutineState> = {}): Promise<RoutineState> {
  const host = createScriptedHost()
  host.calibration.routineAfter(taken, change)
  return host.handlers['calibration.state']({})
}

describe('orderOf', () => {
  it('asks for an empty hook at the zero', async () => {
    expect(orderOf(await after(0)).title).toBe('Take all weights off')
  })
  it('names the stack of a step, and what to put on for it', async () => {
    const order = orderOf(await after(3))
    expect(order.title).toBe('Hang 5 kg + 10 kg')
    expect(order.advice).toMatch(/^Put on 5 kg,/)
  })
  it('uses the heaviest stack for the preloads', async () => {
    const order = orderOf(await after(0, { phase: 'preloading', current: null, preloadsDone: 1 }))
    expect(order.title).toBe('Preload 2 of 3: hang 2 kg + 5 kg + 10 kg + 20 kg + 20 kg b')
  })
  it('says hands off, and why it still waits', async () => {
    const state = await after(3, { phase: 'waiting-for-steady' })
    expect(orderOf({ ...state, live: { ...state.live, unsteadyBecause: 'it swings' } }).advice).toBe(
      'Waiting: it swings.',
    )
    expect(orderOf({ ...state, phase: 'averaging' }).title).toBe('Hands off')
  })
})

describe('changeWords', () => {
  it('says what to take off on the way down', () => {
    expect(changeWords(['5 kg', '10 kg'], ['10 kg'], 'down')).toMatch(/^Take off 5 kg/)
  })
  it('says both where a stack is exchanged', () => {
    expect(changeWords(['10 kg'], ['20 kg'], 'up')).toMatch(/^Put on 20 kg and take off 10 kg/)
  })
})

describe('where one stands', () => {
  it('says run, direction and place in the run', async () => {
    expect(placeWords(await after(3))).toBe('Run 1 of 3, going up, reading 4 of 13')
    expect(placeWords(await after(13))).toBe('Run 2 of 3, going up, reading 1 of 13')
  })
  it('counts what is done', async () => expect(progressWords(await after(3))).toBe('3 of 39 readings done'))
})
