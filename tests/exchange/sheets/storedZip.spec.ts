import { expect, it } from 'vitest'
import yauzl from 'yauzl'
import { storedZip } from '#exchange/sheets/storedZip.ts'

it('packs parts that yauzl finds with their names, and unpacks with their checksums right', async () => {
  const parts = { 'a.txt': 'first', 'folder/ü.txt': 'zweitens, größer', 'empty.txt': '' }
  const zip = await yauzl.fromBufferPromise(storedZip(parts), { lazyEntries: true, autoClose: false })
  const found: Record<string, string> = {}
  for await (const entry of zip.eachEntry()) {
    const pieces: Buffer[] = []
    for await (const piece of await zip.openReadStreamPromise(entry)) pieces.push(piece as Buffer)
    found[entry.fileName] = Buffer.concat(pieces).toString()
  }
  expect(found).toEqual(parts)
})
