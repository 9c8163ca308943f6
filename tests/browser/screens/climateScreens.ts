import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { at, type Screen, settle } from './screenSteps.ts'

/** With a row that cannot be, one whose time goes back, and a gap. */
const loggerFile = {
  name: 'loft.csv',
  mimeType: 'text/csv',
  buffer: Buffer.from(
    [
      'Time;Temperature (°C);RH (%)',
      ...Array.from(
        { length: 60 },
        (_, i) => `${1 + (i > 40 ? 5 : 0) + Math.floor(i / 24)}.3.2026 ${i % 24}:00;${i % 7},5;6${i % 9}`,
      ),
      '30.2.2026 12:00;5,5;60',
      '2.3.2026 12:00;5,5;60',
      '9.3.2026 12:00;5,5;104',
      '9.3.2026 13:00;open;60',
    ].join('\n'),
  ),
}

/** The climate of a store, and the file of a logger. */
export const climateScreens: readonly Screen[] = [
  { name: 'climate', host: () => createScriptedHost(), show: at('#/climate') },
  {
    name: 'climate-none',
    host: () => {
      const host = createScriptedHost()
      host.climate.takeDown()
      return host
    },
    show: at('#/climate'),
  },
  { name: 'new-climate', host: () => createScriptedHost(), show: at('#/climate/new') },
  {
    name: 'new-climate-tried',
    host: () => createScriptedHost({ preferences: { units: 'US' } }),
    show: async (page) => {
      await at('#/climate/new')(page)
      await page.getByLabel('File of the logger').locator('input').setInputFiles(loggerFile)
      await page.getByLabel('Time that its clock kept').fill('+01:00')
      await page.getByLabel('Name of the store').fill('loft')
      await page.getByRole('button', { name: 'Show what the rows become' }).click()
      await page.getByText('would be new').waitFor()
      await settle(page)
    },
  },
]
