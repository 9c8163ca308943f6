import { Trouble } from '#contract/errors.ts'
import type { OverviewFilter, overviewProcedures } from '#contract/findings/overview.ts'
import type { HandlersOf } from '#contract/procedures.ts'
import { overviewSheet } from '#exchange/findings/overviewSheet.ts'
import type { HandlerParts } from '../core/handlerParts.ts'

/** Every block of a programme at once, asked for and printed. */
export function overviewHandlers({
  archive,
  reading,
  clock,
  printPdf,
}: Pick<HandlerParts, 'archive' | 'reading' | 'clock' | 'printPdf'>): HandlersOf<typeof overviewProcedures> {
  const overview = (filter: OverviewFilter) => reading.ask((reader) => reader.overview(filter))
  return {
    'overview.of': overview,
    'overview.pdf': async ({ filter, view, title }) => {
      if (printPdf === undefined)
        throw new Trouble(
          'unsupported',
          'No Chromium was found that could print the sheet.',
          'Print it from this page, on A3 across.',
        )
      const { units } = await archive.preferences()
      const head = { title, instant: clock.instant() }
      return { bytes: await printPdf(overviewSheet(await overview(filter), view, head, units)) }
    },
  }
}
