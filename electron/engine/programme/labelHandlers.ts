import { Trouble } from '#contract/errors.ts'
import type { HandlersOf } from '#contract/procedures.ts'
import type { labelProcedures } from '#contract/programme/labelProcedures.ts'
import type { HandlerParts } from '../core/handlerParts.ts'
import { drawnSheets, labelsOf, labelsToPrint } from './labelSheets.ts'

/** Labels on sheets, drawn and printed, and blocks found by their numbers. */
export function labelHandlers({ archive, printPdf }: HandlerParts): HandlersOf<typeof labelProcedures> {
  return {
    'labels.pages': async ({ choice, sheet, from, count }) => {
      const { labels, head } = await labelsOf(archive, choice)
      return { labels: labels.length, ...(await drawnSheets(labels, sheet, head, { from, count })) }
    },
    'labels.pdf': async ({ choice, sheet }) => {
      if (printPdf === undefined)
        throw new Trouble(
          'unsupported',
          'No Chromium was found that could write a PDF.',
          'Print the sheets from this page, at 100 %.',
        )
      return { bytes: await printPdf((await labelsToPrint(archive, choice, sheet)).html) }
    },
    'numbers.list': ({ numbers }) => archive.numberedSpecimens(numbers),
    'numbers.find': ({ number }) => archive.findNumber(number),
  }
}
