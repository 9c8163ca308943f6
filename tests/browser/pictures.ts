/**
 * Pictures of every screen in exact states, to look at: `node tests/browser/pictures.ts [part of a name]`.
 * They go to tests/output/pictures, in both themes at both sizes, and as a window of 1280 x 800
 * shows it at twice its size.
 */
import type { Look } from './harness/chromium.ts'
import { openPage, takePicture } from './harness/openPage.ts'
import { screens } from './screens/screens.ts'

const looks: Look[] = [
  { width: 1280, height: 800, theme: 'light' },
  { width: 1280, height: 800, theme: 'dark' },
  { width: 1920, height: 1080, theme: 'light' },
  { width: 1920, height: 1080, theme: 'dark' },
  { width: 640, height: 400, theme: 'light' },
  { width: 640, height: 400, theme: 'dark' },
]

const wanted = process.argv[2] ?? ''
const sizes = process.argv[3] ?? ''
for (const screen of screens.filter(({ name }) => name.includes(wanted)))
  for (const look of looks.filter(({ width, theme }) => `${width}-${theme}`.includes(sizes))) {
    const host = screen.host()
    const opened = await openPage({ host: 'loopback', engine: host, look })
    await screen.show(opened.page, host)
    // Until every gliding axis has come to rest.
    await opened.page.waitForTimeout(1000)
    process.stdout.write(`${await takePicture(opened.page, `${screen.name}-${look.width}-${look.theme}`)}\n`)
    for (const problem of opened.problems) process.stdout.write(`  ${problem}\n`)
    await opened.close()
  }
