import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { curvedCharacteristic, readingCounts } from '#acquisition/virtual/transferCharacteristic.ts'
import type { RoutineState } from '#contract/calibration/calibrationRoutine.ts'
import { procedures } from '#contract/procedures.ts'
import { polynomialAt } from '#domain/calibration/fit/polynomial.ts'
import { chromiumPath } from './harness/chromium.ts'
import { type OpenedPage, openPage, takePicture } from './harness/openPage.ts'
import { type OwnEngine, openOwnEngine, type RealEngine } from './harness/ownEngine.ts'

/** A whole calibration on the virtual amplifier in a real browser, by keys alone: no pointer is ever used. */
describe.skipIf(chromiumPath === null)('a calibration by keyboard on the virtual amplifier', () => {
  let own: OwnEngine
  let engine: RealEngine
  let opened: OpenedPage

  beforeAll(async () => {
    own = await openOwnEngine()
    engine = own.engine
    await engine.handlers['preferences.set']({ cautionsRead: true, capacityN: 20_000 })
    const source = { kind: 'virtual', scenario: 'idle', rateHz: 80, seed: 11, speed: 20 } as const
    await engine.handlers['bench.connect'](procedures['bench.connect'].input.parse({ source }))
    opened = await openPage({ host: 'loopback', engine })
    await opened.page.getByRole('navigation').waitFor()
  })
  afterAll(async () => {
    await opened?.close()
    await own?.close()
  })

  const press = (key: string) => opened.page.keyboard.press(key)
  const type = (text: string) => opened.page.keyboard.type(text)
  const heading = (name: string | RegExp) => opened.page.getByRole('heading', { name, level: 1 }).waitFor()
  const routine = () => engine.handlers['calibration.state']({})

  /** Tabs until the control of that name has the focus. */
  async function tabTo(name: string): Promise<void> {
    for (let i = 0; i < 120; i++) {
      await press('Tab')
      const focused = await opened.page.evaluate(() => {
        const element = document.activeElement
        if (element?.matches('body, main')) return ''
        const labels = element instanceof HTMLInputElement ? [...(element.labels ?? [])] : []
        return [element?.textContent, ...labels.map((label) => label.textContent)].join(' ')
      })
      if (focused.includes(name)) return
    }
    throw new Error(`Tab does not reach "${name}"`)
  }

  async function untilRoutine(test: (state: RoutineState) => boolean): Promise<RoutineState> {
    for (let waits = 0; waits < 20_000; waits++) {
      const state = await routine()
      if (state.problem !== null) throw new Error(state.problem.message)
      if (test(state)) return state
      await opened.page.waitForTimeout(10)
    }
    throw new Error(`not reached: ${JSON.stringify((await routine()).live)}`)
  }

  it('plans steps from a set of weights, and shows their forces', async () => {
    await press('i')
    await heading('Calibration')
    await opened.page.getByText('Uncalibrated', { exact: true }).waitFor()
    await tabTo('Calibrate')
    await press('Enter')
    await heading('Calibrate with known weights')
    await tabTo('Latitude, in')
    await type('53.4')
    // The noise of the virtual cell flutters by some 5 N, and half of that 200 times is what a range is verified from.
    await tabTo('On the cell')
    await press('ArrowRight')
    await tabTo('Force on the cell over weight')
    await type('4')
    await tabTo('Runs')
    await press('Control+a')
    await type('2')
    await tabTo('Average over')
    await press('Control+a')
    await type('1')
    await tabTo('Begin with 1, 2, 5')
    await press('Enter')
    await tabTo('Suggest steps')
    await press('Enter')
    // 58 kg by R 111 at 53.4 degrees and sea level, at four to one: 4 x 0.99985 x 58 x 9.81370 = 2276.4 N (conventional mass,
    // air of 1.2 kg/m3).
    await opened.page.getByText('2276').first().waitFor()
    await tabTo('Begin')
    await press('Enter')
    await heading(/Preload 1 of 3/)
  })

  it('leaves the preloads when there are enough of them', async () => {
    await press('l')
    await opened.page.getByRole('button', { name: 'Take the virtual weights off' }).waitFor()
    await press('l')
    await press('Enter')
    await heading(/Preload 2 of 3/)
    await press('n')
    await heading('Take all weights off')
  })

  it('reads every step, and one of them again', async () => {
    const { positions } = await routine()
    for (let index = 0; index < positions.length; index++) {
      await untilRoutine((state) => state.current === index && (state.phase === 'zero' || state.phase === 'step'))
      await heading(positions[index]!.forceN === 0 ? 'Take all weights off' : /^Hang /)
      await opened.page.locator(`[data-position="${index}"][data-here]`).waitFor()
      await hangAndRead(positions[index]!.forceN, index)
      if (index === 2) {
        await opened.page.locator(`[data-position="${index + 1}"][data-here]`).waitFor()
        await heading(/^Hang /)
        await press('r')
        await untilRoutine((state) => state.current === index && state.phase === 'step')
        await opened.page.locator(`[data-position="${index}"][data-here]`).waitFor()
        await hangAndRead(positions[index]!.forceN, index)
      }
    }
    await heading('Result')
    const { readings } = await routine()
    expect(readings).toHaveLength(positions.length + 1)
    expect(readings.filter(({ standing }) => standing === 'replaced')).toHaveLength(1)
  })

  async function hangAndRead(forceN: number, index: number): Promise<void> {
    await press('l')
    await opened.page
      .getByText(`On it now: ${forceN === 0 ? 'nothing' : forceN.toFixed(forceN < 1000 ? 2 : 1)}`)
      .waitFor()
    const before = (await routine()).readings.length
    await press('Enter')
    await untilRoutine((state) => state.readings.length > before && state.current !== index)
  }

  it('keeps the result under a name and puts it in force', async () => {
    await tabTo('Name')
    await press('Control+a')
    await type('Keyboard weights')
    await tabTo('Save')
    await press('Enter')
    await heading('Keyboard weights')
    await takePicture(opened.page, 'real-calibration')
    await tabTo('Put in force')
    await press('Enter')
    await heading('Put in force: Keyboard weights')
    await type('first one')
    await tabTo('Name or initials')
    await type('bench 1')
    await press('Enter')
    await opened.page.locator('dialog').waitFor({ state: 'detached' })
    await opened.page.getByText('in force', { exact: true }).waitFor()
    await press('b')
    await opened.page.getByRole('link', { name: 'Keyboard weights' }).first().waitFor()
    await expect.poll(() => opened.page.getByText('uncalibrated', { exact: true }).count()).toBe(0)
  })

  it('found the curve of the virtual cell within its stated uncertainty at every step', async () => {
    const { calibration, inForce } = await engine.handlers['calibrations.get']({ calibrationId: 1 })
    const { result, budget } = calibration.assessment
    expect(inForce).toBe(true)
    expect(calibration.readings).toHaveLength(17)
    const errorN = (forceN: number) =>
      Math.abs(
        polynomialAt(result.coefficients, readingCounts(curvedCharacteristic, forceN, forceN)) -
          polynomialAt(result.coefficients, readingCounts(curvedCharacteristic, 0, 0)) -
          forceN,
      )
    expect(budget!.steps.length).toBeGreaterThan(0)
    for (const { forceN, expandedN } of budget!.steps) expect(errorN(forceN), `${forceN} N`).toBeLessThan(expandedN)
    // The zero of the virtual cell wanders by 2 N (SD) in quarter hours, by less than 1 N in a run of some 100 s; beside
    // that, means of 80 readings with a noise of 1 N count for little.
    for (const { forceN } of result.steps) expect(errorN(forceN), `${forceN} N`).toBeLessThan(4)
  })

  it('reported no error anywhere on the way', () => expect(opened.problems).toEqual([]))
})
