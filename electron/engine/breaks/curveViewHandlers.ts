import type { breakProcedures } from '#contract/breaks/procedures.ts'
import type { HandlersOf } from '#contract/procedures.ts'
import type { HandlerParts } from '../core/handlerParts.ts'
import { makeComparison } from './comparison.ts'
import { filteredCurve, slopeCurve } from './filteredCurve.ts'

export type CurveViewName = 'breaks.group' | 'breaks.filtered' | 'breaks.slope' | 'comparison.make'

/** Curves looked at through a filter, by their slope, or beside each other, and which breaks belong together. */
export function curveViewHandlers({
  archive,
  tasks,
  emit,
}: Pick<HandlerParts, 'archive' | 'tasks' | 'emit'>): Pick<HandlersOf<typeof breakProcedures>, CurveViewName> {
  return {
    'breaks.group': ({ breakId }) => archive.breakGroup(breakId),
    'breaks.filtered': async ({ breakId, filter, ...range }) =>
      filteredCurve(await archive.break(breakId), await archive.readCurve(breakId), filter, range),
    'breaks.slope': async ({ breakId, windowS, ...range }) =>
      slopeCurve(await archive.break(breakId), await archive.readCurve(breakId), windowS, range),
    'comparison.make': (request) =>
      tasks.run('comparison', (signal) =>
        makeComparison(archive, request, (progress) => emit('task.progress', progress), signal),
      ),
  }
}
