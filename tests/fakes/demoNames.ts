import type { Archive } from '#archive/archive.ts'
import { demoBlocks } from '#engine/keeping/demo/demoBlocks.ts'
import { demoSpecimens } from '#engine/keeping/demo/planDemo.ts'

/** How the demo calls each of its blocks, by the number that is written on it. */
export async function demoNames(archive: Pick<Archive, 'glueUps' | 'glueUp'>): Promise<Map<string, string>> {
  return new Map(demoBlocks(await demoSpecimens(archive)).map(({ number, name }) => [number, name]))
}
