// Held by tests/engine/keeping/demo/fillDemo.spec.ts.
import type { Archive } from '#archive/archive.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { GlueUpRecord } from '#contract/programme/glueUpProcedures.ts'
import { type DemoPull, demoLosses } from './demoPulls.ts'
import { type DemoGroup, demoBlockName, demoGroups, isOfGroup } from './demoStudy.ts'
import type { PlannedDemo } from './planDemo.ts'

type Glued = GlueUpRecord['specimens'][number]

/** A block of the demo: its group, its place in it from 0 on, and how the demo calls it. */
export type DemoBlock = Pick<Glued, 'specimenId' | 'number' | 'board' | 'areaMm2'> & {
  group: DemoGroup
  index: number
  name: string
}

/** An archive that is being filled with the demo, once its blocks are glued. */
export type FilledDemo = PlannedDemo & {
  archive: Archive
  program: string
  calibration: Calibration | null
  blocks: readonly DemoBlock[]
}

/** The glued blocks of all groups, without the spares. */
export function demoBlocks(glued: readonly Glued[]): DemoBlock[] {
  return demoGroups.flatMap((group) =>
    glued
      .filter((one) => isOfGroup(group, one))
      .map(({ specimenId, number, board, areaMm2 }, index) => ({
        ...{ specimenId, number, board, areaMm2, group, index },
        name: demoBlockName(group, index),
      })),
  )
}

const lost = new Set(demoLosses.flatMap(({ blocks }) => blocks))

/** The blocks of a pull, without those that were lost before it. */
export function blocksOfPull(blocks: readonly DemoBlock[], { adhesive, ageMonths }: DemoPull): DemoBlock[] {
  return blocks.filter(
    ({ group, name }) => group.adhesive === adhesive && group.ageMonths === ageMonths && !lost.has(name),
  )
}
