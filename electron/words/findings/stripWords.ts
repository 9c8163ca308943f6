import { countOf } from '../units/counts.ts'
import { percentText } from '../units/numbers.ts'
import type { Quantity } from '../units/quantities.ts'

/** How much of the bonded area tore in the wood. */
export function tornWoodWords(woodFailurePercent: number | null): string {
  return woodFailurePercent === null ? 'wood failure not assessed' : `${percentText(woodFailurePercent)} wood failure`
}

type Block = { name: string; strengthMPa: number; lowerLimit: boolean; woodFailurePercent: number | null }

/** One block of a group: its strength, or what it held at least, and how much wood tore. */
export function stripBlockWords(block: Block, strength: Quantity): string {
  const { name, strengthMPa, lowerLimit, woodFailurePercent } = block
  return `${name}: ${lowerLimit ? 'at least ' : ''}${strength.text(strengthMPa)}, ${tornWoodWords(woodFailurePercent)}`
}

type Group = { name: string; meanMPa: number | null; blocks: readonly Block[] }

/** What stands above the strip of a group. */
export function stripGroupWords({ name, blocks, meanMPa }: Group, strength: Quantity): string {
  const mean = meanMPa === null ? '' : `, mean ${strength.text(meanMPa)}`
  return `${name}: ${countOf(blocks.length, 'specimen')}${mean}`
}

/** What strips of groups show, each with its range. */
export function groupStripWords(groups: readonly Group[], strength: Quantity): string {
  if (groups.length === 0) return 'There is no group.'
  const sentences = groups.map((group) => {
    const values = group.blocks.map(({ strengthMPa }) => strengthMPa)
    const range =
      values.length === 0 ? '' : `, ${strength.number(Math.min(...values))} to ${strength.text(Math.max(...values))}`
    return `${stripGroupWords(group, strength)}${range}.`
  })
  return sentences.join(' ')
}
