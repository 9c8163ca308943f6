import { join } from 'node:path'
import { expect, it } from 'vitest'
import { startLoopback } from '#shells/loopback/server.ts'
import { buildIfNeeded, projectFolder } from '#shells/start/build.ts'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { chromiumPath, openBrowser } from './harness/chromium.ts'

it.skipIf(chromiumPath === null)('says so when the program goes away, and keeps what is on the screen', async () => {
  await buildIfNeeded('page')
  const engine = createScriptedHost()
  const loopback = await startLoopback({ engine, pageFolder: join(projectFolder, 'dist/renderer'), port: 0 })
  const { context, close } = await openBrowser()
  const page = context.pages()[0] ?? (await context.newPage())
  await page.goto(loopback.url)
  await page.getByRole('heading', { name: 'Waiting for load' }).waitFor()
  await loopback.close()
  const alert = page.getByRole('alert').filter({ hasText: 'The connection to the program is lost.' })
  await alert.waitFor()
  await page.getByRole('heading', { name: 'Waiting for load' }).waitFor()
  // An action tells its own trouble beside the notice.
  await page.keyboard.press('t')
  await page.getByRole('alert').filter({ hasText: 'not connected' }).waitFor()
  expect(await page.getByRole('alert').count()).toBe(2)
  await close()
})
