import type { CaptureListener } from '#acquisition/captureEvents.ts'
import { type CaptureSessionOptions, type RunningSession, startCaptureSession } from '#acquisition/captureSession.ts'
import { createVirtualAmplifier, type VirtualAmplifierOptions } from '#acquisition/virtual/virtualAmplifier.ts'
import type { LiveFrame, SignalState } from '#contract/bench/bench.ts'
import type { SampleBlock } from '#contract/breaks/curve.ts'
import { type DetectionSettings, detectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import type { Tare } from '#contract/calibration/forceScale.ts'
import { createSteppedClock, type SteppedClock } from '#engine/core/steppedClock.ts'

export type HeardCapture = {
  start: Parameters<CaptureListener['begin']>[0]
  blocks: { block: SampleBlock; atS: number }[]
  result: EvaluationResult | null
  ending: string | null
  tare: Tare | null
}

/** A capture session that writes down all it says, at a clock that is stepped. */
export function listenedSession(options: Partial<CaptureSessionOptions> = {}) {
  const clock: SteppedClock = createSteppedClock(Date.UTC(2031, 3, 6, 8))
  const captures: HeardCapture[] = []
  const frames: LiveFrame[] = []
  const tares: Tare[] = []
  const signals: SignalState[] = []
  const gaps: { timeS: number; missing: number }[] = []
  const restarts: number[] = []
  const rejected: { count: number; example: string }[] = []
  const listener: CaptureListener = {
    signal: (state) => signals.push(state),
    tared: (tare) => tares.push(tare),
    begin: (start) => captures.push({ start, blocks: [], result: null, ending: null, tare: session.tare() }),
    samples: (block) => captures.at(-1)!.blocks.push({ block, atS: clock.nowS() }),
    end: (result, ending) => Object.assign(captures.at(-1)!, { result, ending }),
    frame: (frame) => frames.push(frame),
    gap: (timeS, missing) => gaps.push({ timeS, missing }),
    restarted: (timeS) => restarts.push(timeS),
    rejected: (count, example) => rejected.push({ count, example: new TextDecoder().decode(example) }),
  }
  const session: RunningSession = startCaptureSession({
    clock,
    lineFormat: { name: 'checked', columns: [] },
    scaleFor: () => ({ kind: 'uncalibrated-scale', nPerCount: 0.01 }),
    settings: settingsWith({}),
    armed: true,
    listener,
    ...options,
  })
  return { clock, session, captures, frames, tares, signals, gaps, restarts, rejected }
}

export const settingsWith = (change: Partial<DetectionSettings>): DetectionSettings =>
  detectionSettings.parse({ capacityN: 25_000, endCodes: [-8_388_608, 8_388_607], ...change })

export type Heard = ReturnType<typeof listenedSession>

/** Lets a virtual amplifier send until it is over, `stepS` of device time at a time, at the pace of the clock. */
export function playAmplifier(
  heard: Heard,
  options: VirtualAmplifierOptions,
  stepS = 0.015,
  until: () => boolean = () => false,
) {
  const amplifier = createVirtualAmplifier(options)
  while (!amplifier.over() && !until()) {
    heard.clock.step(stepS)
    const bytes = amplifier.bytesUntil(amplifier.givenUntilS() + stepS)
    if (bytes.length > 0) heard.session.bytes(bytes, heard.clock.nowS())
  }
  return amplifier
}

/** All samples of a capture in one piece, times in seconds as the archive gives them back. */
export function storedSamples({ blocks }: HeardCapture): {
  timeS: Float64Array<ArrayBuffer>
  readings: Float64Array<ArrayBuffer>
} {
  const timeUs = blocks.flatMap(({ block }) => [...block.timeUs])
  return {
    timeS: Float64Array.from(timeUs, (time) => time / 1e6),
    readings: Float64Array.from(blocks.flatMap(({ block }) => [...block.readings])),
  }
}
