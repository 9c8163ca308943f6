// Held by tests/engine/createEngine.spec.ts.
import { printableText } from '#acquisition/rejectedLines.ts'
import type { LiveFrame } from '#contract/bench/bench.ts'
import type { BenchParts } from './benchParts.ts'
import type { ShownParts } from './benchState.ts'
import { calibrationAtHand } from './calibrationShown.ts'
import type { CaptureRecorder } from './capture/captureRecorder.ts'
import type { OnceEmpty } from './capture/onceEmpty.ts'
import { cableReactions } from './device/cableOut.ts'
import type { LinkListener } from './device/link.ts'
import type { SessionRecord } from './device/sessionRecord.ts'
import { createSettlingWatch } from './warnings/settlingWatch.ts'

export type EventParts = Pick<BenchParts, 'clock' | 'emit' | 'log' | 'calibration'> &
  Omit<ShownParts, 'link' | 'queue' | 'storage'> & {
    link(): ShownParts['link']
    session: SessionRecord
    recorder: CaptureRecorder
    onceEmpty: OnceEmpty
    changed(): void
  }

/** What the bench does of each thing that its device and the capture session on it tell. */
export function benchEvents(bench: EventParts): LinkListener {
  const { clock, emit, log, changed, session, recorder, progress, outcome, overload, tareWatch, onceEmpty } = bench

  const settling = createSettlingWatch((trouble) => emit('trouble', trouble))

  function watchForce(frame: LiveFrame): void {
    const link = bench.link()
    if (frame.unit === 'N' && link.tare() !== null && frame.loadRange !== null)
      overload.look(farthest(frame.loadRange), link.facts().settings.capacityN, clock.nowS(), link.capturing())
    tareWatch.frame(frame)
  }

  return {
    changed,
    signal({ unstableBecause }) {
      settling.look(bench.link().tare() === null ? unstableBecause : null, clock.nowS())
      changed()
    },
    reading: bench.occupation.reading,
    opening(source, facts) {
      settling.restart()
      session.begin(source, facts)
    },
    connected(choice, source, { lineFormat }) {
      const path = choice.kind === 'serial' ? choice.path : source.label
      log({ event: 'connected', path, lineFormat: lineFormat.name })
    },
    ...cableReactions(bench),
    tared({ offset, sd }) {
      const { startThreshold } = bench.link().signal()
      bench.zeroMoved.taken(offset, startThreshold, bench.link().scale())
      tareWatch.restart()
      settling.restart()
      log({ event: 'tared', offset, sd })
      changed()
    },
    begin(start) {
      const link = bench.link()
      const calibration = calibrationAtHand(link.scale(), bench.calibration())
      onceEmpty.captureBegan()
      progress.begin()
      overload.begin()
      outcome.show(null)
      recorder.begin(start, link.scale(), link.tare(), calibration?.assessment.result.verifiedRangeN ?? null)
    },
    samples: recorder.samples,
    end(result, ending) {
      const isBreak = result.outcome === 'break'
      onceEmpty.captureEnded(isBreak)
      // The load that is gone now is no drift.
      tareWatch.restart()
      progress.ended(result.peakN)
      recorder.end(result, ending)
      outcome.show(isBreak ? 'broke' : 'unloaded')
    },
    frame(frame) {
      emit('live.frame', frame)
      progress.frame(frame)
      watchForce(frame)
      onceEmpty.frame(frame)
      changed()
    },
    gap: (timeS, missing) => log({ event: 'gap', timeS, missing }),
    restarted: (timeS) => log({ event: 'restarted', timeS }),
    rejected(count, example) {
      session.rejected(count, example)
      log({ event: 'rejected-line', count, example: printableText(example) })
    },
  }
}

/** The force of a range that is farthest from zero. */
function farthest([lowest, highest]: [number, number]): number {
  return -lowest > highest ? lowest : highest
}
