import type { Page } from 'playwright-core'
import type { LiveFrame } from '#contract/bench/bench.ts'
import { scriptedCurve } from '#tests/fakes/scripted/scriptedCurve.ts'
import { createScriptedHost, type ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { calibrationScreens } from './calibrationScreens.ts'
import { climateScreens } from './climateScreens.ts'
import { compareScreens } from './compareScreens.ts'
import { findingsScreens } from './findingsScreens.ts'
import { importScreens } from './importScreens.ts'
import { reevaluationScreens } from './reevaluationScreens.ts'
import { reviewScreens } from './reviewScreens.ts'
import { at, type Screen, settle } from './screenSteps.ts'
import { sessionScreens } from './sessionScreens.ts'
import { studyScreens } from './studyScreens.ts'
import { withHistory } from './withHistory.ts'

export { type Screen, settle } from './screenSteps.ts'

/** The frames of a stretch of a curve, as the live stream gives them: quiet for `quietS` first. */
export function framesOf(peakN: number, fromS: number, toS: number, offsetS = 0): LiveFrame {
  const { timeS, readings } = scriptedCurve(peakN, 7.4, 80, 7)
  const from = timeS.findIndex((time) => time >= fromS)
  const to = timeS.findLastIndex((time) => time <= toS) + 1
  const force = readings.slice(from, to)
  return {
    timeS: timeS.slice(from, to).map((time) => time + offsetS),
    force,
    unit: 'N',
    latest: force.at(-1) ?? null,
    loadRange: rangeOf(force),
    peak: fromS < 2 ? null : Math.max(...force),
  }
}

const rangeOf = (force: Float64Array): [number, number] => [Math.min(...force), Math.max(...force)]

function quiet(host: ScriptedHost): void {
  const { timeS } = scriptedCurve(1, 16.5, 80, 3)
  const { readings } = scriptedCurve(1, 16.5, 80, 3)
  host.emit('live.frame', { timeS, force: readings, unit: 'N', latest: 2.4, loadRange: rangeOf(readings), peak: null })
}

async function load(page: Page, host: ScriptedHost, peakN: number, toS: number): Promise<void> {
  quiet(host)
  await settle(page)
  host.setBench({ phase: 'loading', captureBreakId: 1, runningPeak: 0 })
  await settle(page)
  const frame = framesOf(peakN, 2, toS, 18.2)
  host.emit('live.frame', frame)
  host.setBench({ runningPeak: frame.peak, capacityShare: (frame.peak ?? 0) / 20_000 })
  await settle(page)
}

/** Every screen, and the bench in every state. */
export const screens: readonly Screen[] = [
  {
    name: 'first-start',
    host: () => {
      const host = createScriptedHost({ specimens: 0, preferences: { source: null, cautionsRead: false } })
      host.setBench({
        connection: { status: 'closed', source: null, label: '', problem: null },
        phase: 'no-signal',
        signal: { ...host.bench().signal, sampleRateHz: null },
      })
      return host
    },
    show: async (page) => {
      await page.waitForSelector('.connect')
    },
  },
  {
    name: 'connect-port',
    host: () =>
      createScriptedHost({
        preferences: {
          source: {
            kind: 'serial',
            path: '/dev/ttyUSB0',
            baudRate: 115200,
            lineFormat: { name: 'number', columns: [] },
          },
        },
      }),
    show: async (page, host) => {
      host.setBench({ connection: { status: 'closed', source: null, label: '', problem: null }, phase: 'no-signal' })
      await at('#/connect')(page)
      await page.getByRole('button', { name: 'Connect my load cell' }).click()
      await page.getByRole('button', { name: 'Listen', exact: true }).click()
      await settle(page)
    },
  },
  {
    name: 'cautions',
    host: () => createScriptedHost({ preferences: { cautionsRead: false } }),
    show: async (page, host) => {
      await page.waitForSelector('dialog[open]')
      quiet(host)
      await settle(page)
    },
  },
  {
    name: 'bench-waiting',
    host: () => createScriptedHost(),
    show: async (page, host) => {
      await page.waitForSelector('.bench')
      quiet(host)
      await settle(page)
    },
  },
  {
    name: 'bench-loading',
    host: () => withHistory(createScriptedHost(), 2),
    show: async (page, host) => {
      await page.waitForSelector('.bench')
      await load(page, host, 4812, 7.6)
    },
  },
  {
    name: 'bench-broke',
    host: () => createScriptedHost(),
    show: async (page, host) => {
      await page.waitForSelector('.bench')
      await load(page, host, 4812, 9.4)
      host.emit('live.frame', { ...framesOf(4812, 9.41, 11, 18.2), peak: null })
      host.addBreak(4812, { flags: ['uncalibrated', 'sampling-too-slow', 'glitch'], samplingBoundPercent: 1.4 })
      await settle(page)
    },
  },
  {
    name: 'bench-assessed',
    host: () => createScriptedHost(),
    show: async (page, host) => {
      await page.waitForSelector('.bench')
      await load(page, host, 4812, 9.4)
      host.emit('live.frame', { ...framesOf(4812, 9.41, 11, 18.2), peak: null })
      host.addBreak(4812)
      await settle(page)
      await page.keyboard.type('75')
      await page.keyboard.press('f')
      await page.keyboard.press('Space')
      await page.keyboard.press('o')
      await page.keyboard.type('clean faces, a splinter at one edge')
      await settle(page)
    },
  },
  {
    name: 'bench-unloaded',
    host: () => createScriptedHost(),
    show: async (page, host) => {
      await page.waitForSelector('.bench')
      await load(page, host, 1830, 9.4)
      host.addBreak(1830, { outcome: 'unloading', strengthMPa: null })
      await settle(page)
    },
  },
  {
    name: 'bench-warning',
    host: () => createScriptedHost(),
    show: async (page, host) => {
      await page.waitForSelector('.bench')
      await load(page, host, 18_900, 9.3)
      host.setBench({ overload: 'warning', capacityShare: 0.94 })
      await settle(page)
    },
  },
  {
    name: 'bench-alarm',
    host: () => createScriptedHost(),
    show: async (page, host) => {
      await page.waitForSelector('.bench')
      await load(page, host, 20_640, 9.4)
      host.setBench({ overload: 'alarm', capacityShare: 1.03 })
      await settle(page)
    },
  },
  {
    name: 'bench-lost',
    host: () => withHistory(createScriptedHost(), 1),
    show: async (page, host) => {
      await page.waitForSelector('.bench')
      quiet(host)
      host.setBench({
        phase: 'no-signal',
        connection: {
          status: 'lost',
          source: {
            kind: 'serial',
            path: '/dev/ttyUSB0',
            baudRate: 115200,
            lineFormat: { name: 'number', columns: [] },
          },
          label: '/dev/ttyUSB0 at 115200 baud',
          problem: {
            code: 'port-lost',
            message: 'The amplifier on /dev/ttyUSB0 went away.',
            hint: 'Plug it in again; the program connects by itself as soon as it is back.',
          },
        },
      })
      await settle(page)
    },
  },
  {
    name: 'bench-far-below-zero',
    host: () => createScriptedHost(),
    show: async (page, host) => {
      await page.waitForSelector('.bench')
      host.setBench({
        tareWarning: { kind: 'far-below-zero', reads: -4200, unit: 'N' },
      })
      await settle(page)
    },
  },
  {
    name: 'bench-no-scale',
    host: () => createScriptedHost({ preferences: { nPerCount: null, capacityN: null, units: 'US' } }),
    show: async (page, host) => {
      host.setBench({
        scale: { kind: 'none' },
        capacityN: null,
        signal: { ...host.bench().signal, unstableBecause: 'the reading moves by more than its noise' },
      })
      await page.waitForSelector('.bench')
      quiet(host)
      await settle(page)
    },
  },
  { name: 'specimens', host: () => withHistory(createScriptedHost()), show: at('#/specimens') },
  {
    name: 'list-filter',
    host: () =>
      withHistory(
        createScriptedHost({
          preferences: { columns: { specimens: ['adhesive', 'lot', 'exposure', 'place', 'gap', 'peak', 'state'] } },
        }),
      ),
    show: async (page) => {
      await at('#/specimens?exposure=bilge&gapLeastMm=0')(page)
      await page.getByRole('button', { name: 'Filter (2)' }).click()
      await page.getByLabel('Age from').fill('young')
      await settle(page)
    },
  },
  {
    name: 'list-columns',
    host: () => withHistory(createScriptedHost()),
    show: async (page) => {
      await at('#/specimens')(page)
      await page.getByRole('button', { name: 'Columns' }).click()
      await settle(page)
    },
  },
  { name: 'breaks', host: () => withHistory(createScriptedHost()), show: at('#/breaks') },
  {
    name: 'archives',
    host: () => createScriptedHost({ capabilities: ['switch-archive'] }),
    show: async (page) => {
      await page.getByRole('button', { name: /Open now/ }).click()
      await page
        .getByRole('dialog')
        .getByRole('button', { name: /saltmarsh/ })
        .waitFor()
      await settle(page)
    },
  },
  {
    name: 'specimen-broke-twice',
    host: () => {
      const host = createScriptedHost()
      for (const peakN of [4812, 3120]) host.addBreak(peakN, { resultsOfSpecimen: 2 })
      host.specimens[0]!.results = 2
      host.setBench({ specimen: host.specimens[1]! })
      return host
    },
    show: async (page) => {
      await at('#/specimens/1')(page)
      await page.getByRole('button', { name: 'Put on the bench' }).click()
      await settle(page)
    },
  },
  {
    name: 'specimen',
    host: () => {
      const host = withHistory(createScriptedHost())
      const { fields } = host.specimens[4]!
      void host.handlers['specimens.correct']({
        specimenId: 5,
        fields: { ...fields, areaMm2: 606 },
        by: 'bench 1',
        reason: 'measured again after the break',
      })
      return host
    },
    show: at('#/specimens/5'),
  },
  {
    name: 'break',
    host: () => {
      const host = withHistory(createScriptedHost())
      void host.handlers['breaks.setAside']({
        breakId: 5,
        cause: 'fixture-touched',
        by: 'bench 1',
        reason: 'fixture touched the block',
      })
      void host.handlers['breaks.takeBack']({ breakId: 5, by: 'bench 1', reason: 'checked the curve' })
      return host
    },
    show: at('#/breaks/5'),
  },
  {
    name: 'correction',
    host: () => withHistory(createScriptedHost()),
    show: async (page) => {
      await at('#/specimens/5')(page)
      await page.getByRole('button', { name: 'Correct' }).click()
      await page.getByRole('button', { name: 'Record the correction' }).click()
      await settle(page)
    },
  },
  {
    name: 'set-aside',
    host: () => withHistory(createScriptedHost()),
    show: async (page) => {
      await at('#/breaks/3')(page)
      await page.getByRole('button', { name: 'Set aside' }).click()
      await settle(page)
    },
  },
  {
    name: 'reassign',
    host: () => withHistory(createScriptedHost()),
    show: async (page) => {
      await at('#/breaks/3')(page)
      await page.getByRole('button', { name: 'Move to another specimen' }).click()
      await page.getByLabel('Find the specimen').fill('epoxy')
      await settle(page)
    },
  },
  {
    name: 'new-specimen',
    host: () => createScriptedHost(),
    show: async (page) => {
      await at('#/specimens/new')(page)
      await page.getByLabel('Overlap length').fill('30')
      await page.getByLabel('Overlap width').fill('2o')
      await page.getByRole('button', { name: 'Add', exact: true }).click()
      await settle(page)
    },
  },
  {
    name: 'archive',
    host: () => withHistory(createScriptedHost()),
    show: async (page) => {
      await at('#/archive')(page)
      await page.getByRole('button', { name: 'Verify the archive' }).click()
      await settle(page)
    },
  },
  { name: 'settings', host: () => createScriptedHost(), show: at('#/settings') },
  {
    name: 'licences',
    host: () => createScriptedHost(),
    show: async (page) => {
      await at('#/settings/licences')(page)
      await page.waitForSelector('.licence-texts')
    },
  },
  {
    name: 'help',
    host: () => createScriptedHost(),
    show: async (page) => {
      await page.waitForSelector('.bench')
      await page.keyboard.press('?')
      await settle(page)
    },
  },
  ...calibrationScreens,
  ...reviewScreens,
  ...reevaluationScreens,
  ...compareScreens,
  ...sessionScreens,
  ...studyScreens,
  ...findingsScreens,
  ...climateScreens,
  ...importScreens,
]
