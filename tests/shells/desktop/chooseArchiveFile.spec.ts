import type { Dialog } from 'electron'
import { expect, test } from 'vitest'
import { chooseArchiveFile } from '#shells/desktop/chooseArchiveFile.ts'

/** The system's dialogs, with what the person chose. */
function dialogs(chosen: string | null) {
  const asked: unknown[] = []
  const dialog = {
    showOpenDialog: async (options: { properties: string[] }) => {
      asked.push(['open', options.properties])
      return { canceled: chosen === null, filePaths: chosen === null ? [] : [chosen] }
    },
    showSaveDialog: async (options: { defaultPath: string }) => {
      asked.push(['save', options.defaultPath])
      return { canceled: chosen === null, filePath: chosen ?? '' }
    },
  }
  return { asked, dialog: dialog as unknown as Pick<Dialog, 'showOpenDialog' | 'showSaveDialog'> }
}

test('asks for a file that is there, or for the place of a new one', async () => {
  const { asked, dialog } = dialogs('/loft/a.breakledger')
  expect(await chooseArchiveFile('open', dialog)).toBe('/loft/a.breakledger')
  expect(await chooseArchiveFile('make', dialog)).toBe('/loft/a.breakledger')
  expect(asked).toEqual([
    ['open', ['openFile']],
    ['save', 'archive.breakledger'],
  ])
})

test('chooses none when the person calls it off', async () => {
  const { dialog } = dialogs(null)
  expect(await chooseArchiveFile('open', dialog)).toBeNull()
  expect(await chooseArchiveFile('make', dialog)).toBeNull()
})
