import type { Page } from 'playwright-core'
import { createScriptedHost, type ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { at, type Screen, settle } from './screenSteps.ts'

function planned(glued?: { toMonths: number; lost: number }): ScriptedHost {
  const host = createScriptedHost()
  host.studies.add({ title: 'Does a gap of 0.3 mm matter?', gapsMm: [0, 0.3], exposures: ['loft'], seed: 3 })
  host.studies.add({}, glued)
  return host
}

/** Types a whole study by keyboard, field after field. */
export async function typeStudy(page: Page): Promise<void> {
  await page.getByLabel('Title').fill('Which adhesive lasts in loft and bilge?')
  await page.getByRole('combobox', { name: 'Adhesives' }).focus()
  for (const name of ['casein C1', 'epoxy E4', 'urea-formaldehyde F6', 'resorcinol R2', 'polyurethane U3', 'PVA V5']) {
    await page.keyboard.type(name)
    await page.keyboard.press('Enter')
  }
  await page.getByRole('combobox', { name: 'Exposures' }).focus()
  for (const name of ['loft', 'bilge']) {
    await page.keyboard.type(name)
    await page.keyboard.press('Enter')
  }
  await page.getByLabel('Ages, in months').fill('0, 6, 12, 18, 24, 30, 36, 48, 60, 72, 84, 96')
}

/** Studies from the list to the groups of one. */
export const studyScreens: readonly Screen[] = [
  { name: 'studies', host: () => planned({ toMonths: 24, lost: 1 }), show: at('#/studies') },
  { name: 'study', host: () => planned({ toMonths: 24, lost: 1 }), show: at('#/studies/2') },
  {
    name: 'study-allocate',
    host: () => planned(),
    show: async (page) => {
      await at('#/studies/2')(page)
      await page.getByRole('button', { name: 'Allocate the blocks' }).click()
      await settle(page)
    },
  },
  {
    name: 'new-study',
    host: () => planned(),
    show: async (page) => {
      await at('#/studies/new')(page)
      await typeStudy(page)
      await page.getByLabel('Difference that matters').fill('10')
      await page.getByRole('combobox', { name: 'Boards' }).fill('plank 1: 60; plank 2: 60')
      await page.keyboard.press('Enter')
      await settle(page)
    },
  },
  {
    name: 'new-study-wrong',
    host: () => planned(),
    show: async (page) => {
      await at('#/studies/new')(page)
      await page.getByLabel('Ages, in months').fill('12, 6, soon')
      await page.getByRole('combobox', { name: 'Boards' }).fill('plank')
      await page.getByRole('button', { name: 'Keep the plan' }).click()
      await settle(page)
    },
  },
  { name: 'edit-study', host: () => planned({ toMonths: 24, lost: 1 }), show: at('#/studies/edit/2') },
]
