import type uPlot from 'uplot'
import type { ForceCurve } from '#contract/breaks/curve.ts'
import { nearestIndex } from '#domain/numbers/risingSearch.ts'

/** The sample under the cursor, in shown units; `beside`: of the second curve there. */
export type CursorSample = { timeS: number; shown: number; beside: number | null }

/** The curves that the cursor reads and how they are drawn. */
export type CursorGround = {
  curve(): ForceCurve | null
  beside(): ForceCurve | null
  factor(): number
}

/** The cursor of a recorded curve: on which sample it stands, and what is read there. */
export type CurveCursor = {
  /** The time of its sample, s; null where it stands on none. */
  timeS(): number | null
  /** Takes the place where the plot has put it, and tells what is read there. */
  standAt(index: number | null): void
  /** Puts it on a sample; one beyond an end is the last there. */
  put(index: number): void
  /** Moves it by samples; from the middle of a stretch when it stands before its beginning or nowhere. */
  move(steps: number, stretch: { fromS: number; toS: number }): void
}

/** The cursor of a plot; `onCursor` is told whenever it reads another sample. */
export function createCurveCursor(
  plot: uPlot,
  ground: CursorGround,
  onCursor: (sample: CursorSample | null) => void,
): CurveCursor {
  let stands: number | null = null

  function timeS(): number | null {
    return stands === null ? null : (ground.curve()?.timeS[stands] ?? null)
  }

  function put(index: number): void {
    const curve = ground.curve()
    if (curve === null || curve.timeS.length === 0) return
    const to = Math.min(Math.max(index, 0), curve.timeS.length - 1)
    const left = plot.valToPos(curve.timeS[to]!, 'x')
    plot.setCursor({ left, top: plot.valToPos(curve.force[to]! * ground.factor(), 'y') }, true)
  }

  return {
    timeS,
    standAt(index) {
      stands = index
      const atS = timeS()
      const force = index === null ? undefined : ground.curve()?.force[index]
      if (atS === null || force === undefined) return onCursor(null)
      const beside = ground.beside()
      const there = beside === null ? undefined : beside.force[nearestIndex(beside.timeS, atS)]
      const factor = ground.factor()
      onCursor({ timeS: atS, shown: force * factor, beside: there === undefined ? null : there * factor })
    },
    put,
    move(steps, { fromS, toS }) {
      const curve = ground.curve()
      if (curve === null) return
      const atS = timeS()
      const from =
        stands !== null && atS !== null && atS >= fromS ? stands : nearestIndex(curve.timeS, (fromS + toS) / 2)
      put(from + steps)
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
