import type { Page } from 'playwright-core'
import type { RoutineState } from '#contract/calibration/calibrationRoutine.ts'
import { quietLive } from '#tests/fakes/scripted/scriptedCalibration.ts'
import { createScriptedHost, type ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { scriptedPlan } from '#tests/fakes/scripted/scriptedReadings.ts'
import { at, type Screen, settle } from './screenSteps.ts'

const readings = 3 * (2 * scriptedPlan.steps.length + 1)

function calibrated(host: ScriptedHost = createScriptedHost()): ScriptedHost {
  host.calibration.withCalibrations()
  return host
}

const routine = (name: string, taken: number, change: Partial<RoutineState> = {}): Screen => ({
  name,
  host: () => {
    const host = createScriptedHost()
    host.calibration.routineAfter(taken, change)
    return host
  },
  show: at('#/calibration/run'),
})

async function fillPlan(page: Page): Promise<void> {
  await at('#/calibration/run')(page)
  await page.getByLabel('Latitude, in °').fill('53.4')
  await page.getByLabel('Height above the sea').fill('12')
  await page.getByLabel('Temperature, in').fill('14.5')
  await page.getByRole('button', { name: 'Suggest steps' }).click()
  await settle(page)
}

/** Calibration from the first empty page to the check weight. */
export const calibrationScreens: readonly Screen[] = [
  { name: 'calibration-none', host: () => createScriptedHost(), show: at('#/calibration') },
  { name: 'calibration-history', host: () => calibrated(), show: at('#/calibration') },
  {
    name: 'weights',
    host: () => {
      const host = createScriptedHost()
      host.calibration.weights = scriptedPlan.weights
      return host
    },
    show: at('#/calibration/weights'),
  },
  {
    name: 'weight-dialog',
    host: () => createScriptedHost(),
    show: async (page) => {
      await at('#/calibration/weights')(page)
      await page.getByRole('button', { name: 'Add a weight' }).click()
      await page.getByLabel('Nominal mass').fill('-5')
      await page.getByLabel('Accuracy').selectOption('own')
      await page.getByRole('button', { name: 'Save', exact: true }).click()
      await settle(page)
    },
  },
  { name: 'plan-empty', host: () => createScriptedHost(), show: at('#/calibration/run') },
  {
    name: 'plan',
    host: () => {
      const host = createScriptedHost()
      host.calibration.weights = scriptedPlan.weights
      return host
    },
    show: fillPlan,
  },
  {
    name: 'plan-wrong',
    host: () => {
      const host = createScriptedHost({ preferences: { capacityN: 500 } })
      host.calibration.weights = scriptedPlan.weights
      return host
    },
    show: async (page) => {
      await fillPlan(page)
      await page.getByLabel('Preloads').fill('2.5')
      await page.getByLabel('Temperature, in').fill('warm')
      await page.getByRole('button', { name: 'Add a step' }).click()
      await page.getByRole('button', { name: 'Begin' }).click()
      await settle(page)
    },
  },
  routine('routine-preload', 0, { phase: 'preloading', current: null, preloadsDone: 1 }),
  routine('routine-zero', 0),
  routine('routine-step', 3, { live: { ...quietLive, latest: 20_347, residualN: 0.02 } }),
  routine('routine-waiting', 17, {
    phase: 'waiting-for-steady',
    live: { ...quietLive, latest: 28_519, unsteadyBecause: 'the reading swings', waitedS: 6, residualN: 0.31 },
  }),
  routine('routine-averaging', 24, {
    phase: 'averaging',
    live: {
      latest: 20_352,
      mean: 20_351.3,
      sd: 2.6,
      count: 97,
      unsteadyBecause: null,
      waitedS: 9,
      averagedShare: 0.61,
      residualN: 0.06,
    },
  }),
  routine('routine-holding', 32, {
    plan: { ...scriptedPlan, creepHoldS: 300 },
    phase: 'holding',
    live: { ...quietLive, latest: 54_893, averagedShare: 0.37, waitedS: 111 },
  }),
  routine('routine-not-steady', 20, {
    problem: {
      code: 'not-stable',
      message: 'The reading did not become steady within 60 s: it swings.',
      hint: 'Let the weights hang still, keep hands off and draughts away, then go on with this step. The readings so far are kept.',
    },
  }),
  routine('routine-reversed', 3, { reversed: true }),
  {
    name: 'routine-break-off',
    host: routine('', 17).host,
    show: async (page) => {
      await at('#/calibration/run')(page)
      // Before the routine is there the key leads to the bench.
      await page.getByRole('button', { name: /^Stop early/ }).waitFor()
      await page.keyboard.press('b')
      await page.getByRole('button', { name: 'Stop early', exact: true }).last().click()
      await settle(page)
    },
  },
  routine('review', readings),
  {
    name: 'review-line',
    host: routine('', readings).host,
    show: async (page) => {
      await at('#/calibration/run')(page)
      await page.getByRole('radio', { name: 'Line' }).check()
      await page.getByLabel('Resolution of the reading').fill('none')
      await settle(page)
    },
  },
  { name: 'calibration-record', host: () => calibrated(), show: at('#/calibration/2') },
  {
    name: 'put-in-force',
    host: () => calibrated(),
    show: async (page) => {
      await at('#/calibration/2')(page)
      await page.getByRole('button', { name: 'Put in force' }).click()
      await settle(page)
    },
  },
  { name: 'check-none', host: () => createScriptedHost(), show: at('#/calibration/check') },
  {
    name: 'check-load',
    host: () => {
      const host = calibrated()
      host.calibration.withChecks(4)
      host.calibration.setCheck({ phase: 'load', weights: ['20 kg'], expectedN: 196.26, result: null })
      return host
    },
    show: at('#/calibration/check'),
  },
  {
    name: 'check-chart',
    host: () => {
      const host = calibrated()
      host.calibration.withChecks(17)
      return host
    },
    show: at('#/calibration/check'),
  },
  {
    name: 'check-outside',
    host: () => {
      const host = calibrated()
      host.calibration.withChecks(17, 0.92)
      return host
    },
    show: at('#/calibration/check'),
  },
  {
    name: 'check-ewma',
    host: () => {
      const host = calibrated()
      host.calibration.withChecks(21)
      return host
    },
    show: async (page) => {
      await at('#/calibration/check')(page)
      await page.getByRole('radio', { name: 'Weighted average (EWMA)' }).check()
      await settle(page)
    },
  },
  {
    name: 'bench-calibrated',
    host: () => calibrated(),
    show: async (page, host) => {
      await page.waitForSelector('.bench')
      host.setBench({
        tareWarning: { kind: 'drifted', reads: 14, unit: 'N' },
      })
      host.addBreak(4812, { flags: [] })
      host.addResultUnder(1, 3)
      await settle(page)
    },
  },
  {
    name: 'break-again',
    host: () => {
      const host = createScriptedHost()
      host.addBreak(4812)
      calibrated(host)
      host.addResultUnder(1, 2)
      host.addResultUnder(1, 3)
      return host
    },
    show: at('#/breaks/1'),
  },
]
