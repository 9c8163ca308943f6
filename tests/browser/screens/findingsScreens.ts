import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { at, type Screen, settle } from './screenSteps.ts'

/** Every question that is asked of the results. */
export const findingsScreens: readonly Screen[] = [
  { name: 'findings-strongest', host: () => createScriptedHost(), show: at('#/findings') },
  {
    name: 'findings-changed',
    host: () => createScriptedHost(),
    show: async (page) => {
      await at('#/findings')(page)
      await page.getByLabel('What changed with age?').check()
      await page.getByLabel('Adhesive').selectOption('casein C1')
      await settle(page)
    },
  },
  {
    name: 'findings-changed-one',
    host: () => createScriptedHost(),
    show: async (page) => {
      await at('#/findings')(page)
      await page.getByLabel('What changed with age?').check()
      await page.getByLabel('Adhesive').selectOption('casein C1')
      await page.getByLabel('Exposure').selectOption('bilge')
      await page.getByLabel('Torn wood', { exact: true }).selectOption('censored')
      await settle(page)
    },
  },
  {
    name: 'findings-next',
    host: () => createScriptedHost(),
    show: async (page) => {
      await at('#/findings')(page)
      await page.getByLabel('What should I do next?').check()
      await settle(page)
    },
  },
  {
    name: 'findings-as-good',
    host: () => createScriptedHost(),
    show: async (page) => {
      await at('#/findings')(page)
      await page.getByLabel('Is one as good as another?').check()
      await page.getByLabel('Exposure').selectOption('loft')
      await page.getByLabel('Reference').selectOption({ index: 2 })
      await page.locator('summary').first().click()
      await settle(page)
    },
  },
  {
    name: 'findings-torn-wood',
    host: () => createScriptedHost({ preferences: { units: 'US' } }),
    show: async (page) => {
      await at('#/findings')(page)
      await page.getByLabel('Does torn wood change the order?').check()
      await settle(page)
    },
  },
  {
    name: 'overview',
    host: () => {
      const host = createScriptedHost()
      host.studies.add({}, { toMonths: 24, lost: 20 })
      return host
    },
    show: at('#/overview/1'),
  },
  {
    name: 'overview-group',
    host: () => createScriptedHost({ preferences: { units: 'US' } }),
    show: async (page) => {
      await at('#/overview')(page)
      await page.getByLabel('Adhesive', { exact: true }).selectOption('casein C1')
      await settle(page)
      await page.locator('[data-place="2"]').press('Enter')
      await settle(page)
    },
  },
  {
    name: 'overview-means',
    host: () => createScriptedHost(),
    show: async (page) => {
      await at('#/overview')(page)
      await page.getByLabel('Table of means').check()
      await page.getByLabel('In percent of').selectOption('epoxy E4')
      await settle(page)
    },
  },
  {
    name: 'findings-overall',
    host: () => {
      const host = createScriptedHost()
      host.addStaleFinding('Spring meeting')
      return host
    },
    show: async (page) => {
      await at('#/findings')(page)
      await page.getByLabel('Which hold best overall?').check()
      await page.getByLabel('Reference adhesive').selectOption('resorcinol R2')
      await page.getByText(/^Kept findings/).click()
      await page.getByText(/^stale/).click()
      await settle(page)
    },
  },
]
