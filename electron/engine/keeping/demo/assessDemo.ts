// Held by tests/engine/keeping/demo/fillDemo.spec.ts.
import type { Archive } from '#archive/archive.ts'
import type { SetAsideCause } from '#contract/breaks/decision.ts'
import { overrulable, pickedSample, prematureSample } from '#domain/strength/overruling.ts'
import type { DemoBlock } from './demoBlocks.ts'
import { demoAssessment } from './demoJoints.ts'
import { demoOverruled, demoSetAside } from './demoPulls.ts'
import { demoAuthor, demoNote } from './demoStudy.ts'

/** Records what is said of a break of the demo: whether it counts, its peak, and what the faces look like. */
export async function assessBreak(archive: Archive, block: DemoBlock, breakId: number, recordedAt: string) {
  const aside = demoSetAside[block.name]
  // First, so that an assessment says that all was done.
  if (aside !== undefined) await setAside(archive, breakId, aside, recordedAt)
  if (block.name in demoOverruled) await overrule(archive, breakId, block.name, recordedAt)
  const seen = demoAssessment(block.group, block.index)
  await archive.addAssessment({ breakId, recordedAt, by: demoAuthor, note: demoNote, ...seen })
}

/** Sets aside what a crash recovered of a loading. */
export async function setCutShortAside(archive: Archive, breakId: number, recordedAt: string) {
  await setAside(archive, breakId, cutShort, recordedAt)
}

const cutShort = { cause: 'other', reason: 'the program was ended while the block was loaded' } as const

async function setAside(
  archive: Archive,
  breakId: number,
  why: { cause: SetAsideCause; reason: string },
  recordedAt: string,
) {
  await archive.addDecision({ breakId, kind: 'set-aside', specimenId: null, by: demoAuthor, recordedAt, ...why })
}

/** The sample that was picked lies so long before the peak, s. */
const pickedBeforePeakS = 0.5

async function overrule(archive: Archive, breakId: number, name: string, recordedAt: string) {
  const { kind, reason } = demoOverruled[name]!
  const record = await archive.break(breakId)
  const curve = await archive.readCurve(breakId)
  const peakS = overrulable(record).result.peakTimeS ?? 0
  const sample =
    kind === 'peak-picked' ? pickedSample(record, curve, peakS - pickedBeforePeakS) : prematureSample(record, curve)
  await archive.addDecision({ breakId, kind, specimenId: null, by: demoAuthor, reason, sample, recordedAt })
}
