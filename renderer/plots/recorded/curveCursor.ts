import type uPlot from 'uplot'
import type { ForceCurve } from '#contract/breaks/curve.ts'
import { nearestIndex } from '#domain/numbers/risingSearch.ts'

/** The sample that is read, in shown units; `beside`: of the second curve there; `kept`: it stays whatever the pointer does. */
export type CursorSample = { timeS: number; shown: number; beside: number | null; kept: boolean }

/** The curves that the cursor reads and how they are drawn. */
export type CursorGround = {
  curve(): ForceCurve | null
  beside(): ForceCurve | null
  factor(): number
}

/** A sample of the curve, its force in the unit of the curve. */
export type KeptSample = { timeS: number; force: number }

/** The cursor of a recorded curve: on which sample it stands, which one is kept, and what is read there. */
export type CurveCursor = {
  /** The time of the sample that is read, s; null where there is none. */
  timeS(): number | null
  /** The sample that is kept, exactly as it was when it was, whatever samples are fetched later; null: none. */
  kept(): KeptSample | null
  /** Keeps a sample, so that it is read until another is kept; the same once more, or null, lets it go. */
  keep(index: number | null): void
  /** Takes the place where the plot has put it, and tells what is read. */
  standAt(index: number | null): void
  /** Puts it on a sample; one beyond an end is the last there. */
  put(index: number): void
  /** Moves it, and with it the sample that is kept; from the middle of a stretch when it stands before its beginning or nowhere. */
  move(steps: number, stretch: { fromS: number; toS: number }): void
}

/** The cursor of a plot; `onCursor` is told whenever it reads another sample. */
export function createCurveCursor(
  plot: uPlot,
  ground: CursorGround,
  onCursor: (sample: CursorSample | null) => void,
): CurveCursor {
  let stands: number | null = null
  let kept: KeptSample | null = null

  function sampleAt(index: number | null): KeptSample | null {
    const curve = ground.curve()
    const timeS = index === null ? undefined : curve?.timeS[index]
    const force = index === null ? undefined : curve?.force[index]
    return timeS === undefined || force === undefined ? null : { timeS, force }
  }

  const read = () => kept ?? sampleAt(stands)

  function tell(): void {
    const sample = read()
    if (sample === null) {
      onCursor(null)
      return
    }
    const { timeS, force } = sample
    const beside = ground.beside()
    const there = beside === null ? undefined : beside.force[nearestIndex(beside.timeS, timeS)]
    const factor = ground.factor()
    const shownBeside = there === undefined ? null : there * factor
    onCursor({ timeS, shown: force * factor, beside: shownBeside, kept: kept !== null })
  }

  /** The sample nearest to an index, which it then stands on; null for a curve without samples. */
  function put(index: number): number | null {
    const curve = ground.curve()
    if (curve === null || curve.timeS.length === 0) return null
    const to = Math.min(Math.max(index, 0), curve.timeS.length - 1)
    const left = plot.valToPos(curve.timeS[to]!, 'x')
    plot.setCursor({ left, top: plot.valToPos(curve.force[to]! * ground.factor(), 'y') }, true)
    return to
  }

  return {
    timeS: () => read()?.timeS ?? null,
    kept: () => kept,
    keep(index) {
      const sample = sampleAt(index)
      kept = sample?.timeS === kept?.timeS ? null : sample
      tell()
    },
    standAt(index) {
      stands = index
      tell()
    },
    put,
    move(steps, { fromS, toS }) {
      const curve = ground.curve()
      if (curve === null) return
      const atS = read()?.timeS ?? null
      const centreS = (fromS + toS) / 2
      const from = nearestIndex(curve.timeS, atS !== null && atS >= fromS ? atS : centreS)
      const to = put(from + steps)
      if (kept === null) return
      kept = sampleAt(to)
      tell()
    },
  }
}

/** How many samples a key moves the cursor by; null when the key is none of its own. */
export function cursorSteps(name: string, fast: boolean): number | null {
  const steps: Record<string, number> = {
    ArrowLeft: fast ? -10 : -1,
    ArrowRight: fast ? 10 : 1,
    Home: Number.NEGATIVE_INFINITY,
    End: Number.POSITIVE_INFINITY,
  }
  return steps[name] ?? null
}
