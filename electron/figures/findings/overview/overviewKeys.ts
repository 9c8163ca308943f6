// Held by tests/figures/findings/overview/overviewFigure.spec.ts.
import { type BlockState, blockStates } from '#contract/findings/overview.ts'
import { type TornWood, tornWoodOf } from '#domain/findings/overview/groupFigures.ts'
import type { OverviewGroup } from '#domain/findings/overview/overviewGroups.ts'
import {
  blockStateWords,
  noAgeWords,
  noStrengthWords,
  stepWords,
  tornWoodKinds,
} from '#words/findings/overviewWords.ts'
import type { Key } from '../../axes/keyRows.ts'
import { scaleInks } from '../../drawing/mark.ts'
import { shapePath } from '../../drawing/pointShape.ts'
import { brokenForm, type Form, shapeOf, unbrokenForm } from './blockForms.ts'
import type { Steps } from './strengthSteps.ts'

const size = 0.9
const kinds: readonly TornWood[] = ['bond', 'partly', 'wood', 'not-assessed']

/** What each step of the colour scale stands for, in the unit of its values. */
export function stepKeys({ bounds }: Steps, unit: string): Key[] {
  return scaleInks.map((ink, step) => ({
    name: stepWords(bounds[step]!, bounds[step + 1]!, unit),
    sign: (at) => [{ kind: 'path', ink, d: shapePath('square', at, 1.1) }],
  }))
}

/** What the signs of an overview stand for: those that occur in it. */
export function overviewKeys(groups: readonly OverviewGroup[], steps: Steps, unit: string): Key[] {
  const blocks = groups.flatMap((group) => group.blocks)
  const broken = blocks.filter(({ strengthMPa }) => strengthMPa !== null)
  const shapes = new Set(broken.map(({ woodFailurePercent }) => tornWoodOf(woodFailurePercent)))
  const states = new Set(blocks.map(({ state }) => state))
  const noStrength = blocks.some(({ state, strengthMPa }) => strengthMPa === null && !isUnbroken(state))
  return [
    ...(broken.length === 0 ? [] : stepKeys(steps, unit)),
    ...kinds
      .filter((kind) => shapes.has(kind))
      .map((kind): Key => {
        const ink = scaleInks[3]
        return {
          name: tornWoodKinds[kind],
          sign: (at) => [{ kind: 'path', ink, d: shapePath(shapeOf[kind], at, size) }],
        }
      }),
    ...blockStates
      .filter((state) => states.has(state) && state !== 'curve')
      .map((state): Key => ({ name: blockStateWords[state], sign: (at) => [pathOf(formOf(state, at))] })),
    ...(noStrength
      ? [{ name: noStrengthWords, sign: (at) => [pathOf(unbrokenForm({ state: 'curve' }, at, size))] } satisfies Key]
      : []),
    ...(groups.some(({ ageMonths }) => ageMonths === null) ? [{ name: noAgeWords, sign: null }] : []),
  ]
}

/** Whether nobody broke a block of that state. */
function isUnbroken(state: BlockState): boolean {
  return state === 'planned' || state === 'waiting' || state === 'lost'
}

function formOf(state: BlockState, at: { x: number; y: number }): Form {
  if (isUnbroken(state)) return unbrokenForm({ state }, at, size)
  return brokenForm({ state, woodFailurePercent: 0 }, 3, at, size)
}

const pathOf = ({ ink, d }: Form) => ({ kind: 'path', ink, d }) as const
