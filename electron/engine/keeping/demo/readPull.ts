// Held by tests/engine/keeping/demo/fillDemo.spec.ts.
import type { DialReading } from '#contract/specimens/typedResult.ts'
import { blocksOfPull, type DemoBlock, type FilledDemo } from './demoBlocks.ts'
import { demoAssessment, demoStrengthMPa } from './demoJoints.ts'
import { type DemoPull, demoPulledOn } from './demoPulls.ts'
import { demoAuthor, demoNote } from './demoStudy.ts'

/** Smallest step of the dial of the press, N. */
const dialStepN = 20

/** Enters what the dial of the press said of a pull, as one list, where that was not done yet. */
export async function readPull(demo: FilledDemo, pull: DemoPull): Promise<void> {
  const brokenOn = demoPulledOn(demo.startOn, pull)
  const blocks = blocksOfPull(demo.blocks, pull)
  // One list is stored whole or not at all
  const { current } = await demo.archive.specimen(blocks[0]!.specimenId)
  if (current.typedResultInForce !== null) return
  const readings = blocks.map((block) => ({ ...readingOf(block), brokenOn }))
  await demo.archive.addDialReadings(readings, `${brokenOn}T16:00:00.000Z`, demoAuthor)
}

function readingOf({ specimenId, group, index, board, areaMm2 }: DemoBlock): Omit<DialReading, 'brokenOn'> {
  const peakN = Math.round((demoStrengthMPa(group, index, board) * areaMm2!) / dialStepN) * dialStepN
  return {
    ...{ specimenId, peakN, resolutionN: dialStepN, readBy: 'two pupils', note: demoNote },
    ...demoAssessment(group, index),
  }
}
