import type { CalibrationRow } from '#contract/calibration/reading.ts'
import { Trouble } from '#contract/errors.ts'
import type { CalibrationOptions } from './calibrationOptions.ts'
import { forceSteps } from './steps/forceSteps.ts'

type Row = CalibrationRow & { readonly name: string }

/** What a live routine adds to its hints; a file has no readings so far. */
export const keptSoFar = 'The readings so far are kept.'

/** How a live routine is told that a reversed cell is meant. */
export const agreeToInvert = 'Accept the reversed sign'

/** What is said of a cell that reads the wrong way while nobody has agreed to that. */
export const wiredInReverse =
  'The reading falls while the force rises: the cell is wired in reverse, or is loaded the other way round.'

function refuse(message: string, hint: string): never {
  throw new Trouble('invalid-input', message, hint)
}

/** Forces that differ only in rounding belong to one step. */
export const stepOfForce = (forceN: number): number => Number(forceN.toPrecision(12))

function checkValues(row: Row, capacityN: number | null): void {
  if (!Number.isFinite(row.forceN) || !Number.isFinite(row.reading))
    refuse(`${row.name}: force and reading must both be numbers.`, 'Correct this row and try again.')
  if (row.forceN < 0)
    refuse(
      `${row.name}: the force is negative.`,
      'Give forces as positive numbers in the direction in which the bench loads; 0 is the zero point.',
    )
  if (capacityN !== null && row.forceN > capacityN)
    refuse(
      `${row.name}: this is more than the rated load of ${capacityN} N.`,
      'Never load the bench above its rated load. Leave this step out, or correct the rated load if it is wrong.',
    )
}

function checkOrder(before: Row, row: Row): void {
  if (before.direction === 'down' && row.direction === 'up')
    refuse(
      `${row.name}: run ${row.run} goes up again after it went down.`,
      'Give every new increase of the load its own run number.',
    )
  const change = stepOfForce(row.forceN) - stepOfForce(before.forceN)
  if (before.direction === row.direction && change === 0)
    refuse(
      `${row.name}: the same load was already applied in this run and direction.`,
      'Leave one of the two out, or give the repeat its own run number.',
    )
  if (row.direction === 'up' && change < 0)
    refuse(
      `${row.name}: the force is lower than ${before.forceN} N before it, in a run that increases.`,
      'Put the steps in the order in which they were applied, mark decreasing ones "down", or start a new run.',
    )
  if (row.direction === 'down' && change > 0)
    refuse(
      `${row.name}: the force is higher than ${before.forceN} N before it, in a part that decreases.`,
      'Put the steps in the order in which they were applied, or start a new run.',
    )
}

/** Checks that the reading follows the force: the same way everywhere, and upwards unless the person has agreed otherwise. */
function checkMovement(pairs: readonly (readonly [Row, Row])[], invertedAccepted: boolean): void {
  const moves = pairs
    .filter(([before, row]) => before.direction === row.direction)
    .map(([before, row]) => ({
      before,
      row,
      way: Math.sign((row.reading - before.reading) * (row.forceN - before.forceN)),
    }))
  const sum = moves.reduce((total, move) => total + move.way, 0)
  if (moves.length > 0 && moves.every((move) => move.way === 0))
    refuse(
      'The reading does not change with the load.',
      `Look at cable, supply and converter, then read again. ${keptSoFar}`,
    )
  if (sum < 0 && !invertedAccepted)
    refuse(wiredInReverse, `${agreeToInvert}, or swap the two signal wires and read again. ${keptSoFar}`)
  const way = sum < 0 ? -1 : 1
  const stray = moves.find((move) => move.way === -way)
  if (stray !== undefined)
    refuse(
      `${stray.row.name}: the reading moves the wrong way, from ${stray.before.reading} at ${stray.before.forceN} N to ${stray.row.reading}.`,
      `Repeat this step; something touched or shifted, or the row is wrong. ${keptSoFar}`,
    )
}

/**
 * Refuses rows that are no calibration, each with one sentence that names the row; counted from 1 in the order given.
 *
 * In each run forces must rise, then fall, each load once in each direction; none negative, none above capacity; the reading
 * must follow the force. Zero force is the zero point.
 * Throws Trouble for the first row at fault.
 * Source: order of loading as in ISO 7500-1 (from memory). Checked: tests/domain/calibration/calibrationRows.spec.ts.
 */
export function checkCalibrationRows(
  rows: readonly CalibrationRow[],
  options: Pick<CalibrationOptions, 'capacityN' | 'invertedAccepted'>,
): void {
  if (rows.length === 0) refuse('There is no reading at all.', 'Apply at least two different loads and read each.')
  const named = rows.map((row, index) => ({
    ...row,
    name: `Row ${index + 1} (run ${row.run}, ${row.direction}, ${row.forceN} N)`,
  }))
  for (const row of named) checkValues(row, options.capacityN)
  const pairs: [Row, Row][] = []
  for (const run of Map.groupBy(named, (row) => row.run).values())
    run.slice(1).forEach((row, index) => {
      pairs.push([run[index]!, row])
    })
  for (const [before, row] of pairs) checkOrder(before, row)
  checkMovement(pairs, options.invertedAccepted)
}

/**
 * Refuses a fit that the rows cannot carry: fewer distinct loads or readings than it has coefficients.
 *
 * Throws Trouble that says how many there are and how many are needed.
 * Source: algebra. Checked: tests/domain/calibration/calibrationRows.spec.ts.
 */
export function checkEnoughSteps(rows: readonly CalibrationRow[], degree: number, throughZero: boolean): void {
  const counted = throughZero ? rows.filter((row) => row.forceN > 0 && row.reading !== 0) : rows
  const steps = Math.min(
    new Set(forceSteps(counted.map((row) => row.forceN))).size,
    new Set(counted.map((row) => row.reading)).size,
  )
  const needed = degree + (throughZero ? 0 : 1)
  if (steps < needed)
    refuse(
      `A curve of degree ${degree} needs at least ${needed} different loads with different readings; there ${steps === 1 ? 'is' : 'are'} ${steps}.`,
      degree > 1 ? 'Apply more loads, or choose a lower degree.' : 'Apply more loads.',
    )
}
