import type { overviewProcedures } from '#contract/findings/overview.ts'
import type { HandlersOf } from '#contract/procedures.ts'
import type { HandlerParts } from '../core/handlerParts.ts'

/** Every block of a programme at once. */
export function overviewHandlers({ archive }: Pick<HandlerParts, 'archive'>): HandlersOf<typeof overviewProcedures> {
  return { 'overview.of': (filter) => archive.overview(filter) }
}
