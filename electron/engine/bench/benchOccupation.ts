import { waitForLoadOff } from '#acquisition/captureSession.ts'
import type { BenchState } from '#contract/bench/bench.ts'
import { Trouble, type TroubleMessage } from '#contract/errors.ts'

export type Occupation = NonNullable<BenchState['busyWith']>

/** What a calibration or a check hears of the bench that it has to itself. */
export type Occupant = {
  reading(timeS: number, reading: number): void
  lost(problem: TroubleMessage): void
}

export type OccupationParts = {
  hearing(): boolean
  capturing(): boolean
  hasZero(): boolean
  armed(): boolean
  arm(armed: boolean): void
  /** The virtual press stands still, or may load again. */
  holdPress(held: boolean): void
  changed(): void
}

/** Who has the bench to himself. No break is looked for meanwhile, nor until the bench is empty again. */
export type BenchOccupation = {
  busyWith(): Occupation | null
  /** Throws Trouble `not-connected`, `not-stable` or `conflict`. The returned function gives the bench back. */
  take(what: Occupation, occupant: Occupant): () => void
  reading(timeS: number, reading: number): void
  lost(problem: TroubleMessage): void
  /** The person arms or disarms; refused while the bench is taken. */
  arm(armed: boolean): void
  /** Another source is connected while the bench is taken: it too must stand still. */
  hold(): void
  /** The force was seen to be near zero. */
  empty(): void
  awaitsEmpty(): boolean
}

/** A bench that nobody has taken yet. */
export function createBenchOccupation(parts: OccupationParts): BenchOccupation {
  let occupied: { what: Occupation; occupant: Occupant } | null = null
  let armsWhenEmpty = false

  function release(): void {
    if (occupied === null) return
    occupied = null
    parts.holdPress(false)
    parts.changed()
  }

  return {
    busyWith: () => occupied?.what ?? null,
    take(what, occupant) {
      if (occupied !== null) throw new Trouble('conflict', `A ${words[occupied.what]} is running.`, finishFirst)
      if (!parts.hearing())
        throw new Trouble(
          'not-connected',
          'No readings arrive from the bench.',
          'Connect the amplifier, or the virtual one, and try again.',
        )
      if (parts.capturing()) throw new Trouble('conflict', recordingNow, waitForLoadOff)
      if (!parts.hasZero())
        throw new Trouble(
          'not-stable',
          'The zero of the bench has not been taken yet.',
          'Take everything off the cell, wait until the bench says that it is waiting, and try again.',
        )
      occupied = { what, occupant }
      armsWhenEmpty ||= parts.armed()
      parts.arm(false)
      parts.holdPress(true)
      parts.changed()
      return release
    },
    reading(timeS, reading) {
      occupied?.occupant.reading(timeS, reading)
    },
    lost(problem) {
      occupied?.occupant.lost(problem)
    },
    arm(armed) {
      if (occupied !== null && armed)
        throw new Trouble('conflict', `No break is recorded during a ${words[occupied.what]}.`, finishFirst)
      armsWhenEmpty = false
      parts.arm(armed)
    },
    hold() {
      if (occupied !== null) parts.holdPress(true)
    },
    empty() {
      if (occupied !== null || !armsWhenEmpty) return
      armsWhenEmpty = false
      parts.arm(true)
    },
    awaitsEmpty: () => occupied === null && armsWhenEmpty,
  }
}

const finishFirst = 'Finish it first, or stop it early.'

/** What is said of a bench on which a capture runs. */
export const recordingNow = 'A break is being recorded.'

/** What is said of a bench that is taken, where it does not matter by what. */
export const benchTaken = 'The bench is being calibrated or checked.'

const words = { calibration: 'calibration', 'check-weight': 'check with a weight' } as const
