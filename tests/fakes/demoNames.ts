import type { Archive } from '#archive/archive.ts'
import { demoBlockName, demoGroups } from '#engine/keeping/demoStudy.ts'
import { demoSpecimens } from '#engine/keeping/planDemo.ts'

/** How the demo calls each of its blocks, by the number that is written on it. */
export async function demoNames(archive: Pick<Archive, 'glueUps' | 'glueUp'>): Promise<Map<string, string>> {
  const names = new Map<string, string>()
  for (const group of demoGroups)
    for (const [index, { number }] of ((await demoSpecimens(archive, group)) ?? []).entries())
      names.set(number, demoBlockName(group, index))
  return names
}
