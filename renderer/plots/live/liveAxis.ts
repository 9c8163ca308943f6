import { type LiveView, leadS } from './liveView.ts'

const secondSteps = [1, 2, 5, 10, 15, 20, 30, 60] as const

type Shown = Pick<LiveView, 'captureFromS' | 'shownFromS' | 'shownToS'>

/** Rolling, the axis counts back from now; a capture counts from its start. Stream time, s. */
function originS({ captureFromS, shownToS }: Shown): number {
  return captureFromS === null ? shownToS : captureFromS + leadS
}

/** A stream time as the axis names it. */
export function nameOfTime(timeS: number, view: Shown): string {
  const seconds = Math.round((timeS - originS(view)) * 10) / 10
  return seconds === 0 && view.captureFromS === null ? 'now' : `${seconds} s`.replace('-', '−')
}

/** The stream times that the axis names: whole seconds from its origin, eight of them at the most. */
export function wholeSeconds(view: Shown): number[] {
  const length = view.shownToS - view.shownFromS
  const step = secondSteps.find((seconds) => length / seconds <= 7) ?? 60
  const origin = originS(view)
  const splits: number[] = []
  for (let k = Math.ceil((view.shownFromS - origin) / step); origin + k * step <= view.shownToS + 1e-9; k++)
    splits.push(origin + k * step)
  return splits
}
