import type { Dialog } from 'electron'
import type { FilePurpose } from '#contract/keeping/archive.ts'

const filters = [
  { name: 'Breakledger archive', extensions: ['breakledger'] },
  { name: 'All files', extensions: ['*'] },
]

/** Asks for an archive with the system's own dialog: one that is there, or a place for a new one. null: none was chosen. */
export async function chooseArchiveFile(
  purpose: FilePurpose,
  dialog: Pick<Dialog, 'showOpenDialog' | 'showSaveDialog'>,
): Promise<string | null> {
  if (purpose === 'open') {
    const { filePaths } = await dialog.showOpenDialog({ title: 'Open an archive', filters, properties: ['openFile'] })
    return filePaths[0] ?? null
  }
  const { filePath } = await dialog.showSaveDialog({
    title: 'New archive',
    defaultPath: 'archive.breakledger',
    filters,
    properties: ['createDirectory'],
  })
  return filePath === '' ? null : filePath
}
