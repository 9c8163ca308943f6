import type { Archive } from '#archive/archive.ts'
import { Trouble } from '#contract/errors.ts'
import { type LabelChoice, mostNumbers } from '#contract/programme/labelProcedures.ts'
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
  if (others.length >= mostNumbers)
    throw new Trouble(
      'invalid-input',
      `These are ${others.length + 1} labels, and ${mostNumbers} are printed at once.`,
      'Choose them by running numbers, one part after the other.',
    )
  return { labels: [first, ...others], head: await archive.chainHead() }
}

/**
 * Draws sheets as `labelPages` does, one after the other: a thousand of them take seconds, and a bench that listens in the same
 * thread must get its turn.
 */
export async function drawnSheets(
  labels: readonly Label[],
  sheet: LabelSheet,
  head: PrintedHead,
  { from, count }: { from: number; count: number },
  signal?: AbortSignal,
): Promise<{ pages: number; drawn: string[] }> {
  const { pages } = labelPages(labels, sheet, head, { from: 0, count: 0 })
  const drawn: string[] = []
  for (let page = from; page < Math.min(pages, from + count); page++) {
    drawn.push(...labelPages(labels, sheet, head, { from: page, count: 1 }).drawn)
    await new Promise((resolve) => setImmediate(resolve))
    signal?.throwIfAborted()
  }
  return { pages, drawn }
}

/** All sheets of a choice as one HTML text to be printed. Rejects as `labelsOf`, where the sheet cannot be printed, or with the signal's reason. */
export async function labelsToPrint(
  archive: Asked,
  choice: LabelChoice,
  sheet: LabelSheet,
  signal?: AbortSignal,
): Promise<{ labels: number; pages: number; html: string }> {
  const { labels, head } = await labelsOf(archive, choice)
  const { pages, drawn } = await drawnSheets(labels, sheet, head, { from: 0, count: Number.POSITIVE_INFINITY }, signal)
  return { labels: labels.length, pages, html: labelHtml(drawn, sheet, titleOf(labels)) }
}
