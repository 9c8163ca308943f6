import { onTestFinished } from 'vitest'
import { createRealEngine } from '#engine/createRealEngine.ts'
import { archiveFileOf } from '#tests/archive/pulledStudy.ts'
import { openPage } from './openPage.ts'
import { readCautions } from './readCautions.ts'

/** The page in a browser on a real archive that `fill` wrote, with its cautions read; both are gone after the test. */
export async function openArchivePage(fill: Parameters<typeof archiveFileOf>[0]) {
  const engine = await createRealEngine({
    archivePath: archiveFileOf(fill),
    host: { host: 'loopback', capabilities: [] },
    program: 'Breakledger test',
  })
  const opened = await openPage({ host: 'loopback', engine })
  onTestFinished(async () => {
    await opened.close()
    await engine.close()
    await engine.archive.close()
  })
  const { page } = opened
  await page.getByLabel('Number of a block').waitFor()
  if (await page.getByRole('button', { name: 'I have read this' }).isVisible()) await readCautions(page)
  return { ...opened, engine }
}
