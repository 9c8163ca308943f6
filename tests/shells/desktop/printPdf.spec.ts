import { access, readFile } from 'node:fs/promises'
import { expect, it } from 'vitest'
import { printPdf } from '#shells/desktop/printPdf.ts'

/** A window in place of Electron's: it remembers what it was asked. */
function fakeWindow(print: () => Promise<Buffer>) {
  const seen = { file: '', html: '', destroyed: 0, options: {} as object, printed: {} as object }
  const open = (options: object) => {
    seen.options = options
    return {
      async loadFile(file: string) {
        seen.file = file
        seen.html = await readFile(file, 'utf8')
      },
      webContents: {
        printToPDF(how: object) {
          seen.printed = how
          return print()
        },
      },
      destroy() {
        seen.destroyed += 1
      },
    }
  }
  return { seen, open: open as never }
}

it('prints the page on the paper that it names, in a window without scripts that nobody sees', async () => {
  const { seen, open } = fakeWindow(async () => Buffer.from('%PDF'))
  expect(new TextDecoder().decode(await printPdf('<p>28</p>', open))).toBe('%PDF')
  expect(seen).toMatchObject({
    ...{ html: '<p>28</p>', destroyed: 1, printed: { preferCSSPageSize: true } },
    options: { show: false, webPreferences: { javascript: false, sandbox: true, nodeIntegration: false } },
  })
})

it('closes the window and leaves no file behind when it does not print', async () => {
  const { seen, open } = fakeWindow(() => Promise.reject(new Error('no printer')))
  await expect(printPdf('', open)).rejects.toThrow('no printer')
  expect(seen.destroyed).toBe(1)
  await expect(access(seen.file)).rejects.toThrow()
})
