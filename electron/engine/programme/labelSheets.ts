import type { Archive } from '#archive/archive.ts'
import { Trouble } from '#contract/errors.ts'
import type { LabelChoice } from '#contract/programme/labelProcedures.ts'
import type { LabelSheet } from '#contract/programme/labelSheet.ts'
import { blockLabel } from '#exchange/labels/blockLabel.ts'
import { labelHtml } from '#exchange/labels/labelHtml.ts'
import { labelPages, type PrintedHead, titleOf } from '#exchange/labels/labelPages.ts'
import type { Label } from '#exchange/labels/labelSvg.ts'

type Asked = Pick<Archive, 'labelledBlocks' | 'chainHead'>

/** The labels of a choice, and the head of the chain that their sheets carry. Rejects with a Trouble where there is none. */
export async function labelsOf(
  archive: Asked,
  choice: LabelChoice,
): Promise<{ labels: readonly [Label, ...Label[]]; head: PrintedHead }> {
  const planned = choice.kind !== 'specimens'
  const [first, ...others] = (await archive.labelledBlocks(choice)).map((block) => blockLabel(block, planned))
  if (first === undefined)
    throw new Trouble(
      'not-found',
      'There is no label to print.',
      choice.kind === 'study' ? 'Allocate the blocks of the study first.' : 'Choose other numbers.',
    )
  return { labels: [first, ...others], head: await archive.chainHead() }
}

/** All sheets of a choice as one HTML text to be printed. Rejects as `labelsOf`, or where the sheet cannot be printed. */
export async function labelsToPrint(
  archive: Asked,
  choice: LabelChoice,
  sheet: LabelSheet,
): Promise<{ labels: number; pages: number; html: string }> {
  const { labels, head } = await labelsOf(archive, choice)
  const { pages, drawn } = labelPages(labels, sheet, head)
  return { labels: labels.length, pages, html: labelHtml(drawn, sheet, titleOf(labels)) }
}
