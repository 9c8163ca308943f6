import { chmod, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { printByChromium } from '#exchange/pdf/chromiumPdf.ts'
import { eventually } from '#tests/fakes/ports/ptyPlug.ts'

let folder = ''
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'breakledger-fake-browser-'))
  // So that all temporary files of the printing lie there as well
  vi.stubEnv('TMPDIR', folder)
})
afterEach(async () => {
  vi.unstubAllEnvs()
  await rm(folder, { recursive: true, force: true })
})

/** A program in place of a browser: a shell script. */
async function standIn(script: string): Promise<string> {
  const file = join(folder, 'browser')
  await writeFile(file, `#!/bin/sh\n${script}\n`)
  await chmod(file, 0o755)
  return file
}
const printsWhatItWasGiven = `
for word in "$@"; do
  case "$word" in --print-to-pdf=*) pdf="\${word#--print-to-pdf=}";; file:*) page="\${word#file://}";; esac
done
cp "$page" "$pdf"`

describe.skipIf(process.platform === 'win32')('printing by a browser', () => {
  it('gives the file that the browser wrote of the page', async () => {
    const bytes = await printByChromium(await standIn(printsWhatItWasGiven), '<p>28</p>')
    expect(new TextDecoder().decode(bytes)).toBe('<p>28</p>')
  })

  it('leaves nothing behind', async () => {
    const browser = await standIn(printsWhatItWasGiven)
    const before = await readdir(folder)
    await printByChromium(browser, '')
    expect(await readdir(folder)).toEqual(before)
  })

  it('says the last that a browser said that failed', async () => {
    const browser = await standIn('echo first >&2; echo "no room on the disk" >&2; exit 3')
    await expect(printByChromium(browser, '')).rejects.toMatchObject({
      code: 'unsupported',
      message: `${browser} did not print the page: no room on the disk.`,
    })
  })

  it('ends the browser when it is stopped, and leaves nothing behind', async () => {
    const browser = await standIn(
      `echo temporary > "$TMPDIR/temporary"; echo begun > "${folder}/begun"; exec sleep 1000`,
    )
    const stop = new AbortController()
    const printed = printByChromium(browser, '', stop.signal)
    await eventually(async () => (await readdir(folder)).includes('begun'))
    stop.abort(new Error('enough'))
    await expect(printed).rejects.toThrow('enough')
    expect((await readdir(folder)).sort()).toEqual(['begun', 'browser'])
  })

  it('says so when the browser ends well and wrote nothing, or cannot be started', async () => {
    await expect(printByChromium(await standIn('exit 0'), '')).rejects.toMatchObject({ code: 'unsupported' })
    await expect(printByChromium(join(folder, 'gone'), '')).rejects.toMatchObject({ code: 'unsupported' })
  })
})
