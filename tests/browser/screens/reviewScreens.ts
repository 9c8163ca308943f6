import type { Page } from 'playwright-core'
import type { CurveEvent, EvaluationResult, LoadCourse } from '#contract/breaks/evaluation.ts'
import { madeEvent } from '#tests/fakes/madeEvents.ts'
import { createScriptedHost, type ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { drawnFace } from '#tests/reference/faces/drawnFace.ts'
import { pngOf } from '#tests/reference/faces/pngOf.ts'
import { at, type Screen, settle } from './screenSteps.ts'

const events: CurveEvent[] = [
  madeEvent({ kind: 'seating', startTimeS: 2.35, endTimeS: 3.1 }),
  madeEvent({
    ...{ kind: 'pop-in', startTimeS: 5.05, endTimeS: 5.62, dropN: 310, dropPercent: 15.4 },
    ...{ fromN: 2012, percentOfPeak: 41.8 },
  }),
  madeEvent({
    ...{ kind: 'stick-slip', startTimeS: 6.4, endTimeS: 7.9, dropN: 265, dropPercent: 8.6, cycles: 5 },
    ...{ fromN: 2934, percentOfPeak: 61, meanDropN: 226, leastDropN: 181, periodS: 0.3 },
  }),
  madeEvent({ kind: 'glitch', startTimeS: 8.2, endTimeS: 8.2125 }),
  madeEvent({ kind: 'plateau', startTimeS: 9.05, endTimeS: 9.4, fromN: 4790, percentOfPeak: 99.6 }),
  madeEvent({
    ...{ kind: 'final-drop', startTimeS: 9.4, endTimeS: 9.45, dropN: 4570, dropPercent: 95 },
    ...{ fromN: 4812, percentOfPeak: 100, manner: 'brittle' as const },
  }),
]

const course: LoadCourse = {
  peaks: 7,
  timeToPeakS: 7.05,
  timeToFailureS: 7.0625,
  meanRateNPerS: 742,
  rates: Array.from({ length: 10 }, (_, i) => ({
    ...{ fromS: 2.35 + 0.705 * i, toS: 3.055 + 0.705 * i, rateNPerS: 380 + 60 * Math.min(i, 7) },
  })),
  rateSpreadPercent: 14.2,
  toe: { zeroTimeS: 2.594, slopeNPerS: 760 },
  impulseNs: 16_240,
  pressSpeedMmPerS: 0.05,
  workJ: 0.812,
}

/** A break with everything that can happen on a curve. */
function eventful(result: Partial<EvaluationResult> = {}): ScriptedHost {
  const host = createScriptedHost()
  for (const peakN of [4620, 4390, 4480]) host.addBreak(peakN)
  host.addBreak(4812, { flags: ['uncalibrated', 'glitch'] }, { events, course, ...result })
  return host
}

/** A break with the photograph of a face. */
function photographed(): ScriptedHost {
  const host = createScriptedHost()
  host.addBreak(4812)
  const content = new Uint8Array(pngOf(drawnFace('perspective', 4, 320, 240)))
  void host.handlers['pictures.attach']({ specimenId: null, breakId: 1, name: 'face a.png', content, by: 'bench 1' })
  return host
}

const signature = { by: 'bench 1', reason: 'the joint cracked there, seen on the face' }

/** Chooses an event in the list. */
async function choose(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: new RegExp(`^${name}`) }).click()
  await settle(page)
}

/** The curve page in its states. */
export const reviewScreens: readonly Screen[] = [
  { name: 'curve', host: () => eventful(), show: at('#/breaks/4') },
  {
    name: 'curve-event',
    host: () => eventful(),
    show: async (page) => {
      await at('#/breaks/4')(page)
      await choose(page, 'Stick-slip')
    },
  },
  {
    name: 'curve-views',
    host: () => eventful(),
    show: async (page) => {
      await at('#/breaks/4')(page)
      await page.getByLabel('Filtered curve beside it').selectOption('moving-average')
      await page.getByLabel('Window').fill('250')
      await page.getByRole('switch', { name: /^Slope/ }).click()
      await page.getByRole('switch', { name: /^Line through/ }).click()
      await page.getByRole('application').focus()
      for (let i = 0; i < 12; i++) await page.keyboard.press('Shift+ArrowLeft')
      await settle(page)
    },
  },
  {
    name: 'curve-filter-refused',
    host: () => eventful(),
    show: async (page) => {
      await at('#/breaks/4')(page)
      await page.getByLabel('Filtered curve beside it').selectOption('cfc-180')
      await settle(page)
    },
  },
  {
    name: 'curve-below',
    host: () => eventful(),
    show: async (page) => {
      await at('#/breaks/4')(page)
      await page.locator('.break-columns').scrollIntoViewIfNeeded()
      await page.locator('.checksum').scrollIntoViewIfNeeded()
      await settle(page)
    },
  },
  {
    name: 'curve-pick',
    host: () => eventful(),
    show: async (page) => {
      await at('#/breaks/4')(page)
      await page.getByRole('application').focus()
      for (let i = 0; i < 6; i++) await page.keyboard.press('Shift+ArrowRight')
      await page.keyboard.press('p')
      await settle(page)
      await page.getByRole('button', { name: 'Take this sample', exact: true }).click()
      await settle(page)
    },
  },
  {
    name: 'curve-picked',
    host: () => {
      const host = eventful()
      void host.handlers['breaks.pickPeak']({ breakId: 4, timeS: 8.6, ...signature })
      return host
    },
    show: at('#/breaks/4'),
  },
  {
    name: 'curve-evaluations',
    host: () => {
      const host = eventful()
      const { evaluations } = host.breaks[3]!
      const first = evaluations[0]!
      evaluations.push(
        {
          ...{ ...first, evaluationId: 50, method: 'break detection 3', madeAt: '2026-06-02T09:00:00.000Z' },
          ...{ reevaluationId: 1, besideId: 4, settings: { ...first.settings, breakDropShare: 0.3 } },
          result: { ...first.result, peakN: 4806 },
        },
        {
          ...{ ...first, evaluationId: 51, method: 'break detection 3', madeAt: '2026-06-03T09:00:00.000Z' },
          ...{ reevaluationId: 2, besideId: 4, settings: { ...first.settings, pressSpeedMmPerS: 0.05 } },
        },
      )
      void host.handlers['breaks.setAside']({
        ...{ breakId: 4, cause: 'fixture-touched', by: 'bench 1', reason: 'heard it knock' },
      })
      void host.handlers['breaks.takeBack']({ breakId: 4, by: 'bench 1', reason: 'checked the curve' })
      void host.handlers['breaks.pickPeak']({ breakId: 4, timeS: 8.6, ...signature })
      void host.handlers['breaks.peakAsFound']({ breakId: 4, by: 'bench 2', reason: 'looked at the curve again' })
      return host
    },
    show: async (page) => {
      await at('#/breaks/4')(page)
      await page.locator('.history').scrollIntoViewIfNeeded()
      await settle(page)
    },
  },
  {
    name: 'practice-dialog',
    host: () => createScriptedHost(),
    show: async (page) => {
      await at('#/settings')(page)
      await page.getByRole('button', { name: 'Change ASTM D905' }).click()
      await page.getByRole('dialog').getByLabel('Name').fill('EN 205')
      await page.locator('dialog').getByRole('button', { name: 'Save' }).click()
      await settle(page)
    },
  },
  {
    name: 'curve-declare',
    host: () => eventful(),
    show: async (page) => {
      await at('#/breaks/4')(page)
      await page.getByRole('button', { name: 'Declare premature failure' }).click()
      await settle(page)
    },
  },
  {
    name: 'curve-premature',
    host: () => {
      const host = eventful()
      void host.handlers['breaks.declarePremature']({ breakId: 4, ...signature })
      return host
    },
    show: at('#/breaks/4'),
  },
  {
    name: 'breaks-overruled',
    host: () => {
      const host = eventful()
      void host.handlers['breaks.declarePremature']({ breakId: 4, ...signature })
      void host.handlers['breaks.pickPeak']({ breakId: 2, timeS: 8.6, ...signature })
      return host
    },
    show: at('#/breaks'),
  },
  {
    name: 'specimens-overruled',
    host: () => {
      const host = eventful()
      void host.handlers['breaks.declarePremature']({ breakId: 4, ...signature })
      return host
    },
    show: at('#/specimens'),
  },
  {
    name: 'specimen-overruled',
    host: () => {
      const host = eventful()
      void host.handlers['breaks.declarePremature']({ breakId: 4, ...signature })
      return host
    },
    show: at('#/specimens/1'),
  },
  {
    name: 'bench-overruled',
    host: () => {
      const host = eventful()
      void host.handlers['breaks.declarePremature']({ breakId: 4, ...signature })
      return host
    },
    show: async (page) => {
      await page.waitForSelector('.bench')
      await settle(page)
    },
  },
  {
    name: 'curve-counts',
    host: () => {
      const host = createScriptedHost({ preferences: { nPerCount: null } })
      host.setBench({ scale: { kind: 'none' } })
      host.addBreak(
        48_120,
        { flags: ['no-scale'], scaleKind: 'none', peakN: null, strengthMPa: null, samplingBoundPercent: null },
        {
          ...{ peakN: null, noiseN: null, loadingRateNPerS: null, samplingBoundN: null, afterBreakN: null },
          events: [
            madeEvent({ kind: 'seating', startTimeS: 2.35, endTimeS: 3.1 }),
            madeEvent({ kind: 'pop-in', startTimeS: 5.05, endTimeS: 5.62, dropPercent: 15.4, percentOfPeak: 41.8 }),
          ],
        },
      )
      return host
    },
    show: at('#/breaks/1'),
  },
  {
    name: 'curve-unloading',
    host: () => {
      const host = createScriptedHost()
      host.addBreak(
        1830,
        { outcome: 'unloading', strengthMPa: null, flags: ['uncalibrated'] },
        { breakTimeS: null, afterBreakN: null, course: { ...course, timeToFailureS: null, toe: null, workJ: null } },
      )
      return host
    },
    show: at('#/breaks/1'),
  },
  {
    name: 'curve-not-loaded',
    host: () => {
      const host = createScriptedHost()
      host.setBench({ specimen: null })
      host.addBreak(
        6,
        { ...{ outcome: 'none', peakN: null, strengthMPa: null }, samplingBoundPercent: null, ending: 'recovered' },
        {
          ...{ peakN: null, peakTimeS: null, onsetTimeS: null, breakTimeS: null, loadingRateNPerS: null },
          ...{ samplingBoundN: null, afterBreakN: null, events: [], flags: ['recovered'] },
        },
      )
      return host
    },
    show: at('#/breaks/1'),
  },
  {
    name: 'photographs',
    host: photographed,
    show: async (page) => {
      await at('#/breaks/1')(page)
      await page.locator('canvas.thumbnail[width="320"]').waitFor()
      await page.getByText('Nothing read from it yet.').scrollIntoViewIfNeeded()
    },
  },
  {
    name: 'wood-from-picture',
    host: photographed,
    show: async (page) => {
      await at('#/breaks/1')(page)
      await page.getByRole('button', { name: /^Wood failure from/ }).click()
      await page.getByText(/% exactly/).waitFor()
      await settle(page)
    },
  },
  {
    name: 'curve-running',
    host: () => {
      const host = createScriptedHost()
      host.addBreak(4200, { outcome: null, ending: null, peakN: null, strengthMPa: null, flags: [] })
      Object.assign(host.breaks[0]!, { end: null, evaluations: [], inForceId: null })
      return host
    },
    show: at('#/breaks/1'),
  },
]
