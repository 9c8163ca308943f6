import { useEffect, useState } from 'react'
import type { BenchState } from '#contract/bench/bench.ts'
import { tareHindrance } from '#words/bench/phaseWords.ts'
import { handsFreeName } from '#words/bench/queueWords.ts'
import { countOf } from '#words/units/counts.ts'
import { writeFixed, writeNumber } from '#words/units/numbers.ts'
import { ageWords } from '#words/units/times.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { Keys } from '../../widgets/Keys.tsx'
import { Switch } from '../../widgets/Switch.tsx'
import './controls.css'

/** The zero, arming and the health of the signal: one quiet line under the curve. */
export function BenchControls({
  bench,
  handsFree,
  onTare,
  onArm,
  onHandsFree,
  tarePending,
}: {
  bench: BenchState
  handsFree: boolean
  onTare(): void
  onArm(armed: boolean): void
  onHandsFree(on: boolean): void
  tarePending: boolean
}) {
  const hindrance = tareHindrance(bench)
  return (
    <section className="controls" aria-label="Zero and recording">
      <div className="controls-zero">
        <button
          type="button"
          className="button"
          aria-disabled={hindrance !== null || tarePending}
          aria-describedby="tare-words"
          onClick={() => hindrance === null && !tarePending && onTare()}
        >
          Take the zero <Keys keys="T" />
        </button>
        <p id="tare-words" className="controls-words">
          {hindrance === null ? <TareWords bench={bench} /> : <>Not now: {hindrance}.</>}
        </p>
      </div>
      <Switch
        label=""
        on={bench.armed}
        onChange={onArm}
        onWord="Recording on"
        offWord="Recording off"
        keys={<Keys keys="A" />}
      />
      <Switch label={handsFreeName} on={handsFree} onChange={onHandsFree} />
      <SignalWords bench={bench} />
    </section>
  )
}

function TareWords({ bench }: { bench: BenchState }) {
  const { force } = useQuantities()
  const { tare, scale } = bench
  const nowMs = useClock(5000)
  if (tare === null) return <>No zero taken yet.</>
  const factor = scale.kind === 'none' ? 1 : force.factor
  const unit = scale.kind === 'none' ? 'counts' : force.unit
  const ageS = (nowMs - Date.parse(tare.takenAt)) / 1000
  return (
    <>
      Zero {writeNumber(tare.offset * factor, 1)} {unit}, SD {writeNumber(tare.sd * factor, 2)} {unit}
      <br />
      taken {ageWords(ageS)} ago
    </>
  )
}

function SignalWords({ bench }: { bench: BenchState }) {
  const { signal } = bench
  if (signal.sampleRateHz === null) return <p className="controls-words controls-signal">No samples</p>
  const rate = writeFixed(signal.sampleRateHz, signal.sampleRateHz < 100 ? 1 : 0)
  const clock = signal.clock === 'device' ? 'timed by the amplifier' : 'timed on arrival'
  const troubles = [
    signal.missingSamples > 0 ? `${signal.missingSamples} missing` : null,
    signal.restarts > 0 ? `amplifier restarted ${countOf(signal.restarts, 'time')}` : null,
    signal.rejectedLines > 0 ? `${signal.rejectedLines} lines not understood` : null,
  ].filter((words) => words !== null)
  return (
    <p className="controls-words controls-signal">
      {rate} samples/s, {troubles.length === 0 ? 'none missing' : troubles.join(', ')}
      <br />
      {clock}
    </p>
  )
}

/** The wall clock in ms, new every so many ms. */
function useClock(everyMs: number): number {
  const [nowMs, setNowMs] = useState(Date.now)
  useEffect(() => {
    const timer = setInterval(() => setNowMs(Date.now()), everyMs)
    return () => clearInterval(timer)
  }, [everyMs])
  return Math.max(nowMs, 0)
}
