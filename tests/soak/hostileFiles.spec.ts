import { expect, it } from 'vitest'
import { attackWithFiles, hostileFiles } from './hostileFiles.ts'

it('files that were made to do harm are read, or refused with a sentence', async () => {
  const quick = hostileFiles.filter(({ large }) => !large)
  // How long one may take is asked by "npm run soak -- hostileFiles".
  expect(await attackWithFiles(quick, Number.POSITIVE_INFINITY)).toEqual({
    tried: 4 * quick.length,
    held: 4 * quick.length,
    broke: [],
  })
})
