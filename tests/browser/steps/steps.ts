/**
 * What a person has to do for a few tasks, with the keyboard alone and with the mouse: `node tests/browser/steps/steps.ts [part of a name]`
 * runs each on the real program, with archives of their own and an amplifier on a pseudo-terminal, and prints keys pressed,
 * clicks made and texts typed (a field is one step), and the seconds from the first page to the end. Nobody thinks in them: most
 * are those of the bench, which are the same for everybody.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { buildIfNeeded } from '#shells/start/build.ts'
import { startCommand } from '#tests/fakes/commandProcess.ts'
import { openBrowser } from '../harness/chromium.ts'
import { type Hands, handsOn } from './hands.ts'
import { type Task, tasks } from './tasks.ts'

async function measure(task: Task, kind: Hands['kind']): Promise<{ steps: number; seconds: number }> {
  const folder = mkdtempSync(join(tmpdir(), 'breakledger-steps-'))
  const program = startCommand([...task.words, '--no-open'], { XDG_DATA_HOME: folder })
  const browser = await openBrowser()
  browser.context.setDefaultTimeout(90_000)
  const page = browser.context.pages()[0]!
  try {
    await page.goto(String((await program.until(({ url }) => url !== undefined)).url))
    await page.getByRole('navigation').waitFor()
    await task.before?.(page)
    const hands = handsOn(page, kind)
    const began = performance.now()
    try {
      await task.run(page, hands)
    } catch (thrown) {
      await page.screenshot({ path: join(tmpdir(), `steps-${kind}.png`) })
      throw thrown
    }
    return { steps: hands.steps(), seconds: (performance.now() - began) / 1000 }
  } finally {
    await browser.close()
    program.child.kill('SIGINT')
    await program.ended
    rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 })
  }
}

await buildIfNeeded('page')
const wanted = process.argv[2] ?? ''
for (const task of tasks.filter(({ name }) => name.includes(wanted)))
  for (const kind of ['keyboard', 'mouse'] as const) {
    const { steps, seconds } = await measure(task, kind)
    process.stdout.write(`${task.name}, ${kind}: ${steps} steps, ${seconds.toFixed(1)} s\n`)
  }
