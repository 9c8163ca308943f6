import type { FailurePattern } from '#contract/breaks/assessment.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { type DemoGroup, demoGroups } from './demoStudy.ts'

/** What is left of the strength of a joint after so many months; 1: all of it. */
type Ageing = (months: number) => number

/** Each year takes the same small share. */
const yearly = (lossPercent: number): Ageing => {
  return (months) => (1 - lossPercent / 100) ** (months / 12)
}

/** Casein takes up water in the bilge: most of the strength is gone within a year, and the rest stays. */
const softening: Ageing = (months) => 0.24 + 0.76 * Math.exp(-months / 7)

const ageing: Record<DemoGroup['exposure'], Record<string, Ageing>> = {
  loft: { C1: yearly(1), E4: yearly(0.3), F6: yearly(0.5), R2: yearly(0), U3: yearly(0.3), V5: yearly(0.5) },
  bilge: { C1: softening, E4: yearly(0.8), F6: yearly(1.5), R2: yearly(0.5), U3: yearly(1), V5: yearly(1.5) },
}

function remaining({ adhesive, exposure, ageMonths }: DemoGroup): number {
  return ageing[exposure][adhesive.code]!(ageMonths)
}

/** SD from board to board, share of the strength. */
const boardSD = 0.03

/** The strength that the press finds in a block of a group, by its place in it from 0 on and the board it was cut from; MPa. */
export function demoStrengthMPa(group: DemoGroup, index: number, board: string): number {
  const { strengthMPa, strengthSD } = group.adhesive
  const left = remaining(group)
  const drawn = createRandom(demoGroups.indexOf(group) * 100 + index, 101).normal()
  const ofBoard = createRandom(Number(board.replace(/\D/g, '')), 103).normal()
  // A bond that goes soft scatters less than it did, but not in proportion
  const spread = strengthSD * (0.4 + 0.6 * left) * Math.max(-2.5, Math.min(2.5, drawn))
  return (strengthMPa * left + spread) * (1 + boardSD * ofBoard)
}

/** What the broken faces of a block look like, to the nearest 5 %. */
export function demoAssessment(
  group: DemoGroup,
  index: number,
): { woodFailurePercent: number; failurePattern: FailurePattern } {
  const drawn = createRandom(demoGroups.indexOf(group) * 100 + index, 102).normal()
  // What the bond no longer bears cannot tear the wood
  const expected = group.adhesive.woodFailurePercent * remaining(group) ** 3
  const percent = Math.max(0, Math.min(100, expected + 15 * drawn))
  const woodFailurePercent = Math.round(percent / 5) * 5
  return {
    woodFailurePercent,
    failurePattern: woodFailurePercent >= 75 ? 'CSF' : woodFailurePercent >= 40 ? 'SCF' : 'AF',
  }
}
