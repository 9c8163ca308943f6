import type { ReevaluationEnd } from '#contract/reevaluation/reevaluation.ts'

/** The breaks of each reason, the commonest reason first. The number of a break in its own reason does not set it apart. */
export function problemGroups(problems: ReevaluationEnd['problems']): { message: string; breakIds: number[] }[] {
  const groups = new Map<string, { message: string; breakIds: number[] }>()
  for (const { breakId, message } of problems) {
    const reason = message.replace(new RegExp(`\\bbreak ${breakId}\\b`, 'gi'), 'break …')
    const group = groups.get(reason)
    if (group === undefined) groups.set(reason, { message: reason, breakIds: [breakId] })
    else group.breakIds.push(breakId)
  }
  return [...groups.values()].toSorted((a, b) => b.breakIds.length - a.breakIds.length)
}
