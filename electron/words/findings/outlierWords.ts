import type { OutlierTest } from '#domain/findings/outliers.ts'
import { listed } from './answerWords.ts'

const tests: Record<OutlierTest, string> = { grubbs: 'Grubbs', 'generalized-esd': 'generalised ESD' }

/** What points a block out. */
export function pointedOutWords(by: readonly OutlierTest[]): string {
  return `pointed out by ${listed(by.map((test) => tests[test]))}; it counts until a person leaves it out`
}

type Means = { group: string; meanMPa: number | null; otherwiseMPa: number | null }

/** Whether the order of the groups by their means would be another one, and who would come first. */
export function otherwiseWords(otherwise: string, groups: readonly Means[], name: (group: string) => string): string {
  const order = (meanOf: (one: Means) => number | null) =>
    groups
      .flatMap((one) => (meanOf(one) === null ? [] : [{ group: one.group, mean: meanOf(one)! }]))
      .sort((one, other) => other.mean - one.mean)
      .map(({ group }) => group)
  const now = order(({ meanMPa }) => meanMPa)
  const then = order(({ otherwiseMPa }) => otherwiseMPa)
  if (now.join('\n') === then.join('\n')) return `${otherwise}, the order of the groups by their means stays as it is.`
  if (now[0] === then[0] || now[0] === undefined || then[0] === undefined)
    return `${otherwise}, the order of the groups by their means would be another one.`
  return `${otherwise}, ${name(then[0])} would have the highest mean, not ${name(now[0])}.`
}
