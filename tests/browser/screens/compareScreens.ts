import { scriptComparison } from '#tests/fakes/scripted/scriptedComparison.ts'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { at, type Screen, settle } from './screenSteps.ts'
import { withHistory } from './withHistory.ts'

const ids = (count: number) => Array.from({ length: count }, (_, i) => i + 1).join(',')

/** Comparing breaks, and selecting them in the list. */
export const compareScreens: readonly Screen[] = [
  {
    name: 'compare-group',
    host: () => scriptComparison(withHistory(createScriptedHost(), 12), { outlyingId: 7 }),
    show: async (page) => {
      await at(`#/compare/${ids(12)}`)(page)
      await page.waitForSelector('.compare-words')
      await settle(page)
    },
  },
  {
    name: 'compare-chosen',
    host: () => {
      const host = scriptComparison(withHistory(createScriptedHost(), 12), { outlyingId: 7, withoutOnset: [3] })
      void host.handlers['breaks.setAside']({
        breakId: 5,
        cause: 'fixture-touched',
        by: 'bench 1',
        reason: 'fixture touched the block',
      })
      return host
    },
    show: async (page) => {
      await at(`#/compare/${ids(12)}`)(page)
      await page.waitForSelector('.compare-words')
      await page.getByRole('application').focus()
      for (let i = 0; i < 4; i++) await page.keyboard.press('ArrowDown')
      await page.keyboard.press('ArrowRight')
      await settle(page)
    },
  },
  {
    name: 'compare-percent',
    host: () => scriptComparison(withHistory(createScriptedHost(), 50), { outlyingId: 7 }),
    show: async (page) => {
      await at(`#/compare/${ids(50)}`)(page)
      await page.getByLabel('% of peak and time').check()
      await page.getByLabel('Peak', { exact: true }).check()
      await settle(page)
      await settle(page)
    },
  },
  {
    name: 'compare-two',
    host: () => scriptComparison(withHistory(createScriptedHost(), 12)),
    show: async (page) => {
      await at('#/compare/2,4')(page)
      await page.getByText('Two curves have no useful median').waitFor()
      await settle(page)
    },
  },
  {
    name: 'compare-running',
    host: () => scriptComparison(withHistory(createScriptedHost(), 12), { endless: true }),
    show: async (page) => {
      await at(`#/compare/${ids(12)}`)(page)
      await page.getByRole('button', { name: 'Stop' }).first().waitFor()
    },
  },
  {
    name: 'compare-stopped',
    host: () => scriptComparison(withHistory(createScriptedHost(), 12), { endless: true }),
    show: async (page) => {
      await at(`#/compare/${ids(12)}`)(page)
      await page.getByRole('button', { name: 'Stop' }).first().click()
      await page.getByText('The comparison was stopped.').waitFor()
    },
  },
  {
    name: 'compare-zoomed',
    host: () => scriptComparison(withHistory(createScriptedHost(), 50), { outlyingId: 7 }),
    show: async (page) => {
      await at(`#/compare/${ids(50)}`)(page)
      await page.waitForSelector('.compare-words')
      await page.getByRole('application').focus()
      for (const key of ['ArrowDown', '+', '+', '+', 'PageDown']) await page.keyboard.press(key)
      await settle(page)
    },
  },
  {
    name: 'breaks-selected',
    host: () => scriptComparison(withHistory(createScriptedHost(), 24)),
    show: async (page) => {
      await at('#/breaks')(page)
      await page.locator('tr[data-index="2"] strong').waitFor()
      await page.locator('tr[data-index="2"]').focus()
      for (const key of ['Space', 'Shift+ArrowDown', 'Shift+ArrowDown', 'ArrowDown', 'ArrowDown', 'Space'])
        await page.keyboard.press(key)
      await page.getByText('selected').waitFor()
      await settle(page)
    },
  },
  { name: 'compare-nothing', host: () => createScriptedHost(), show: at('#/compare') },
]
