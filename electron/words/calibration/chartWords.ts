import type { LoadDirection } from '#contract/calibration/reading.ts'
import { countOf } from '../units/counts.ts'
import { signedNumber } from '../units/numbers.ts'
import type { Quantity } from '../units/quantities.ts'
import { dayWords } from '../units/times.ts'
import { directionWords } from './readingWords.ts'
import { loadText } from './weightWords.ts'

/** A force with its sign and hundredths. */
export function signedForce(forceN: number, { factor, unit }: Quantity): string {
  return `${signedNumber(forceN * factor, 2)} ${unit}`
}

type Residual = { number: number; run: number; direction: LoadDirection; forceN: number; residualN: number }

/** One residual of a calibration, with the reading that it belongs to. */
export function residualWords({ number, run, direction, forceN, residualN }: Residual, force: Quantity): string {
  return `Reading ${number}, run ${run} ${directionWords[direction]}, ${loadText(forceN, force)}: ${signedForce(residualN, force)}`
}

/** What a plot of residuals says: how many, how far they reach, and which lies farthest out. */
export function residualsWords(residuals: readonly Residual[], force: Quantity): string {
  const farthest = farthestBy(residuals, ({ residualN }) => residualN)
  if (farthest === null) return 'There is no reading.'
  const runs = new Set(residuals.map(({ run }) => run)).size
  return `${countOf(residuals.length, 'reading')} in ${countOf(runs, 'run')}. The residual farthest from zero: ${residualWords(farthest, force)}.`
}

/** Which runs a shape stands for where there are so many shapes. */
export function runsWords(first: number, runs: number, shapes: number): string {
  return runs > shapes ? `runs ${first}, ${first + shapes}, …` : `run ${first}`
}

type StepError = { forceN: number; errorPercent: number }

/** The relative error of one step. */
export function stepErrorWords({ forceN, errorPercent }: StepError, force: Quantity): string {
  return `${loadText(forceN, force)}: ${signedNumber(errorPercent, 2)} %`
}

/** What a plot of step errors says. */
export function stepErrorsWords(steps: readonly StepError[], force: Quantity): string {
  const farthest = farthestBy(steps, ({ errorPercent }) => errorPercent)
  if (farthest === null) return 'There is no step with an error.'
  return `${countOf(steps.length, 'step')}. The error farthest from zero: ${stepErrorWords(farthest, force)}.`
}

type Control = {
  count: number
  centreN: number | null
  /** Lower and upper; no lower one where only an upper one means something. */
  limitsN: readonly [number | null, number] | null
  /** Names of the values outside. */
  outside: readonly string[]
}

/** What a control chart says: its centre and limits, and which values lie outside. */
export function controlWords({ count, centreN, limitsN, outside }: Control, force: Quantity): string {
  const sentences = [countOf(count, 'value')]
  if (centreN !== null) sentences.push(`Centre ${signedForce(centreN, force)}`)
  if (limitsN === null) return [...sentences, 'There are no limits yet.'].join('. ')
  const [lower, upper] = limitsN
  sentences.push(
    lower === null
      ? `Upper limit ${signedForce(upper, force)}`
      : `Limits ${signedForce(lower, force)} to ${signedForce(upper, force)}`,
    outside.length === 0 ? 'None is outside.' : `Outside: ${outside.join(', ')}.`,
  )
  return sentences.join('. ')
}

/** What a chart of drift says: from when to when, and how far the newest lies from the first. */
export function driftWords(days: readonly string[], newest: string): string {
  if (days.length === 0) return 'There is no calibration.'
  return `${countOf(days.length, 'calibration')}, ${dayWords(days[0]!)} to ${dayWords(days.at(-1)!)}. The newest against the first: ${newest}.`
}

function farthestBy<One>(ones: readonly One[], value: (one: One) => number): One | null {
  let farthest: One | null = null
  for (const one of ones) if (farthest === null || Math.abs(value(one)) > Math.abs(value(farthest))) farthest = one
  return farthest
}
