import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { at, type Screen, settle } from './screenSteps.ts'

const wide = join(import.meta.dirname, '../../../samples/sheets/wide-by-colour.xlsx')

const rows = Array.from({ length: 80 }, (_, row) =>
  row % 9 === 4
    ? `C1-${row},casein C1,a lot,0.75,130,3/4/2020,`
    : `C1-${row},casein C1,${400 + row},0.75,${5 * (row % 20)},${10 + (row % 20)}/4/2020,loft`,
)

/** A sheet as people keep one: a row of it is one block, and some rows cannot be read. */
export const plainTable = `No,Glue,Load (lbf),Area (in2),Wood failure %,Broken,Condition\n${rows.join('\n')}\n`

async function give(page: Page, file: string | { name: string; mimeType: string; buffer: Buffer }): Promise<void> {
  await at('#/import')(page)
  await page.setInputFiles('input[type=file]', file)
  await page.getByRole('region', { name: 'The sheet' }).waitFor()
  await settle(page)
}
const csv = { name: 'bench book 2020.csv', mimeType: 'text/csv', buffer: Buffer.from(plainTable) }

/** Past results brought in, from the choice of a file to the fates of its rows; and a list of readings of a dial. */
export const importScreens: readonly Screen[] = [
  { name: 'import', host: () => createScriptedHost(), show: at('#/import') },
  {
    name: 'import-tried',
    host: () => createScriptedHost(),
    show: async (page) => {
      await give(page, csv)
      await page.getByRole('button', { name: /^Try it/ }).click()
      await page.getByRole('region', { name: /What would become/ }).scrollIntoViewIfNeeded()
      await settle(page)
    },
  },
  { name: 'import-colours', host: () => createScriptedHost(), show: (page) => give(page, wide) },
  {
    name: 'import-blocks',
    host: () => createScriptedHost(),
    show: async (page) => {
      const text = ',loft,,bilge,\nAdhesive,1,2,1,2\ncasein C1,4800,4700,3800,3700\n'
      await give(page, { ...csv, buffer: Buffer.from(text) })
      await page.getByText('Exposure of each block').click()
      await settle(page)
    },
  },
  {
    name: 'import-locked',
    host: () => createScriptedHost(),
    show: async (page) => {
      await at('#/import')(page)
      await page.setInputFiles('input[type=file]', { ...csv, buffer: Buffer.from('d0cf11e0a1b11ae1', 'hex') })
      await page.getByRole('alert').waitFor()
      await settle(page)
    },
  },
  { name: 'readings', host: () => createScriptedHost(), show: at('#/readings') },
  {
    name: 'readings-typed',
    host: () => createScriptedHost(),
    show: async (page) => {
      await at('#/readings')(page)
      await page
        .getByLabel('Readings, one a line')
        .fill('C1-LL-01; 4800; 75 %; CF; 2031-05-02\nC1-LL-02; 1079 lbf\nC1-LL-03; 480 kN\nX-9; 4700\nC1-LL-01; many')
      await page.getByLabel('Smallest step').fill('50')
      await page.getByRole('button', { name: 'Record the readings' }).click()
      await settle(page)
    },
  },
]
