import { expect, it } from 'vitest'
import { attackWithFiles, hostileFiles } from './hostileFiles.ts'

it('files that were made to do harm are read, or refused with a sentence', async () => {
  const quick = hostileFiles.filter(({ large }) => !large)
  expect(await attackWithFiles(quick, 60)).toEqual({ tried: 4 * quick.length, held: 4 * quick.length, broke: [] })
}, 240_000)
