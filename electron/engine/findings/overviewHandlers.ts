import { Trouble } from '#contract/errors.ts'
import type { overviewProcedures } from '#contract/findings/overview.ts'
import type { HandlersOf } from '#contract/procedures.ts'
import { overviewSheet } from '#exchange/findings/overviewSheet.ts'
import type { HandlerParts } from '../core/handlerParts.ts'

/** Every block of a programme at once, asked for and printed. */
export function overviewHandlers({
  archive,
  clock,
  printPdf,
}: Pick<HandlerParts, 'archive' | 'clock' | 'printPdf'>): HandlersOf<typeof overviewProcedures> {
  return {
    'overview.of': (filter) => archive.overview(filter),
    'overview.pdf': async ({ filter, view, title }) => {
      if (printPdf === undefined)
        throw new Trouble(
          'unsupported',
          'No Chromium was found that could print the sheet.',
          'Print it from this page, on A3 across.',
        )
      const { units } = await archive.preferences()
      const head = { title, instant: clock.instant() }
      return { bytes: await printPdf(overviewSheet(await archive.overview(filter), view, head, units)) }
    },
  }
}
