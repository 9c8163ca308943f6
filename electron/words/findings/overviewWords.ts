import type { BlockState, MeanTreatment, Overview } from '#contract/findings/overview.ts'
import { type GroupFigures, groupFigures, type TornWood, tornWoodFrom } from '#domain/findings/overview/groupFigures.ts'
import type { GroupMean } from '#domain/findings/overview/meanTable.ts'
import type { GroupBlock, OverviewGroup } from '#domain/findings/overview/overviewGroups.ts'
import { ageInWords, conditionParts, joined, madeAlike } from '../breaks/groupName.ts'
import { simulatedMark } from '../keeping/demoWords.ts'
import { countOf } from '../units/counts.ts'
import { percentText, percentWords, writeCount, writeNumber, writeTenths } from '../units/numbers.ts'
import type { Quantities, Quantity } from '../units/quantities.ts'
import { dayWords } from '../units/times.ts'
import { apart, conditionTraits } from './groupNames.ts'
import { noFitWords } from './noteWords.ts'

/** What each state of a block is called in the overview. */
export const blockStateWords: Readonly<Record<BlockState, string>> = {
  planned: 'not glued yet',
  waiting: 'on the shelf',
  lost: 'lost',
  excluded: 'broken, left out by a person',
  'peak-only': 'peak only, no curve',
  curve: 'with its curve',
}

/** What each kind of broken faces is called. */
export const tornWoodKinds: Readonly<Record<TornWood, string>> = {
  bond: `less than ${tornWoodFrom.partly} % wood failure`,
  partly: `${tornWoodFrom.partly} to ${tornWoodFrom.wood} % wood failure`,
  wood: `${tornWoodFrom.wood} % wood failure or more`,
  'not-assessed': 'faces not assessed',
}

/** A block that broke and whose area nobody knows. */
export const noStrengthWords = 'broken, bonded area not known'

/** How an age heads a column: its months. */
export function ageHead(ageMonths: number | null): string {
  return ageMonths === null ? '?' : writeTenths(ageMonths)
}

/** What the question mark among the ages stands for. */
export const noAgeWords = '?: spares, and blocks whose age is not known'

type Condition = Pick<OverviewGroup, 'jointType' | 'bondLineGapMm' | 'exposure'>

/** What conditions have in common, and what each is called beside the others. */
export function conditionHeads(
  conditions: readonly Condition[],
  { length }: Pick<Quantities, 'length'>,
): { shared: string; heads: string[] } {
  const parts = conditions.map((condition) => conditionParts(condition, length.text))
  const told = apart(parts, conditionTraits)
  return told === null ? { shared: '', heads: parts.map(joined) } : { shared: told.shared, heads: told.own }
}

/** Which group it is. */
export function overviewGroupName(
  group: Omit<OverviewGroup, 'blocks'>,
  { length }: Pick<Quantities, 'length'>,
): string {
  return `${madeAlike(group, length.text)}, ${ageInWords(group.ageMonths)}`
}

/** Which group it is, and what stands in it. */
export function overviewGroupWords(group: OverviewGroup, quantities: Pick<Quantities, 'length' | 'strength'>): string {
  const said = figuresWords(groupFigures(group.blocks), quantities.strength)
  return `${overviewGroupName(group, quantities)}: ${said}`
}

function figuresWords(
  { states, meanMPa, leastMPa, mostMPa, wood, assessed }: GroupFigures,
  strength: Quantity,
): string {
  const broken = states.curve + states['peak-only']
  const strengths =
    meanMPa === null
      ? ''
      : leastMPa === mostMPa
        ? `, ${strength.text(meanMPa)}`
        : `, ${strength.number(leastMPa)} to ${strength.text(mostMPa)}, mean ${strength.text(meanMPa)}`
  const torn = assessed === 0 ? '' : `, ${writeCount(wood)} of ${writeCount(assessed)} with ${tornWoodKinds.wood}`
  const others: [number, string][] = [
    [states['peak-only'], 'peak only'],
    [states.excluded, 'left out'],
    [states.lost, 'lost'],
    [states.waiting, blockStateWords.waiting],
    [states.planned, blockStateWords.planned],
  ]
  const parts = others.flatMap(([count, words]) => (count === 0 ? [] : [`${writeCount(count)} ${words}`]))
  return [`${writeCount(broken)} broken${strengths}${torn}`, ...parts].join('; ')
}

/** One block of a group, in a few words. */
export function overviewBlockWords(block: GroupBlock, strength: Quantity): string {
  if (block.state === 'planned' || block.state === 'waiting' || block.state === 'lost')
    return blockStateWords[block.state]
  const value = block.strengthMPa === null ? noStrengthWords : strength.text(block.strengthMPa)
  const torn =
    block.woodFailurePercent === null
      ? tornWoodKinds['not-assessed']
      : `${percentText(block.woodFailurePercent)} wood failure`
  const state = block.state === 'curve' ? '' : `, ${blockStateWords[block.state]}`
  return `${value}, ${torn}${state}`
}

/** What an overview shows, for those who do not see it. */
export function overviewDescription(groups: readonly OverviewGroup[], strength: Quantity): string {
  if (groups.length === 0) return 'There is no block.'
  const adhesives = new Set(groups.map(({ adhesive }) => adhesive))
  const blocks = groups.flatMap((group) => group.blocks)
  return `${countOf(blocks.length, 'block')} of ${countOf(adhesives.size, 'adhesive')} in ${countOf(groups.length, 'group')}: ${figuresWords(groupFigures(blocks), strength)}. Every block is one mark; in a group the marks rise with their strength from left to right, and what is not broken stands below.`
}

/** That not all blocks are shown, and what to do. */
export function boundedWords(shown: number, all: number): string {
  return `${writeCount(shown)} of ${countOf(all, 'block')} are shown, whole groups of them: choose a study or an adhesive to see the others.`
}

export const overviewTitle = 'Every block, by adhesive, condition and age'

/** What stands before the ages of a line. */
export const ageHeadsTitle = 'Age, months'

/** The values of a step of the colour scale. */
export function stepWords(from: number, to: number, unit: string): string {
  return `${writeNumber(from, 1)} to ${writeNumber(to, 1)} ${unit}`
}

/** What a table of means is called: with its treatment of torn wood, and what it is held against. */
export function meanTableTitle(treatment: string, unit: string, reference: string | null): string {
  const what = reference === null ? `Mean strength, ${unit}` : `Mean strength in percent of ${reference}`
  return `${what}, torn wood ${treatment}`
}

/** Why a place of the table has no number. */
export function noMeanWords(woodFailure: MeanTreatment['woodFailure'], reference: string | null): string {
  const without = {
    observed: 'no result that counts',
    adjusted: 'no result that counts',
    'bond-only': 'no result of a bond that failed',
    censored: 'no result, or too few bonds that failed for a fit',
  }[woodFailure]
  return reference === null ? `–: ${without}` : `–: ${without}, here or of the reference beside it`
}

/** A mean of a group in words. */
export function groupMeanWords(
  mean: GroupMean,
  reference: string | null,
  quantities: Pick<Quantities, 'length' | 'strength'>,
): string {
  const name = overviewGroupName(mean, quantities)
  if (mean.meanMPa === null) return `${name}: ${mean.noFit === null ? 'no mean' : noFitWords(mean.noFit)}`
  const held = mean.held === 0 ? '' : `, of which ${writeCount(mean.held)} held more`
  const words = `${name}: mean ${quantities.strength.text(mean.meanMPa)} of ${countOf(mean.n, 'block')}${held}`
  if (reference === null) return words
  return mean.percentOfReference === null
    ? `${words}; ${reference} has none here`
    : `${words}, ${percentWords(mean.percentOfReference)} of ${reference}`
}

/** What a table of means shows, for those who do not see it: the weakest and the strongest. */
export function meanTableDescription(
  means: readonly GroupMean[],
  reference: string | null,
  quantities: Pick<Quantities, 'length' | 'strength'>,
): string {
  const shownOf = (mean: GroupMean) => (reference === null ? mean.meanMPa : mean.percentOfReference)
  const known = means.filter((mean) => shownOf(mean) !== null).sort((one, other) => shownOf(one)! - shownOf(other)!)
  const [lowest, highest] = [known[0], known.at(-1)]
  if (lowest === undefined || highest === undefined) return 'No group has a mean.'
  const empty = means.length - known.length
  const words = (mean: GroupMean) => groupMeanWords(mean, reference, quantities)
  const without = empty === 0 ? '' : ` ${countOf(empty, 'group')} without a number.`
  if (lowest === highest) return `${words(lowest)}.${without}`
  return `${countOf(known.length, 'mean')}. Lowest: ${words(lowest)}. Highest: ${words(highest)}.${without}`
}

/** How many blocks a mean is of, below it. */
export function countText(n: number): string {
  return `n ${writeCount(n)}`
}

export const countMeaning = 'n: blocks in the mean'

/** How many of the blocks shown nobody measured. */
export function simulatedBlocksWords(simulated: number, shown: number): string {
  const which = simulated === shown ? 'All blocks shown' : `${writeCount(simulated)} of the blocks shown`
  return `${which} are ${simulatedMark}: their numbers are invented.`
}

/** What has to be known beside an overview: that not all is shown, and what nobody measured. */
export function overviewRemarks({ numbers, blocks, simulated }: Overview): string[] {
  const shown = numbers.length
  return [
    ...(shown < blocks ? [boundedWords(shown, blocks)] : []),
    ...(simulated === 0 ? [] : [simulatedBlocksWords(simulated, shown)]),
  ]
}

/** Which blocks a saved overview shows. */
export function overviewAbout({ numbers, blocks }: Overview, title: string): string {
  return numbers.length < blocks ? `${title}. ${boundedWords(numbers.length, blocks)}` : `${title}.`
}

/** The line above an overview on paper: what it is of, from which day, and what has to be known. */
export function overviewSheetWords(overview: Overview, title: string, instant: string): string {
  return [`${title}, ${dayWords(instant)}.`, ...overviewRemarks(overview)].join(' ')
}
