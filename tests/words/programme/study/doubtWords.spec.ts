import { expect, it } from 'vitest'
import { doubtWords } from '#words/programme/study/doubtWords.ts'

it.each([
  [{ kind: 'nothing-left' } as const, 'nothing to make'],
  [{ kind: 'one-block-a-cell' } as const, 'no spread'],
  [{ kind: 'boards-short', give: 210, need: 216 } as const, 'give 210 blocks and 216 are planned'],
  [{ kind: 'reference-unknown', name: 'hide glue' } as const, 'hide glue, is none of the adhesives'],
  [{ kind: 'no-start-age' } as const, 'an age of 0'],
  [{ kind: 'two-ages', ages: 2 } as const, 'not its course'],
  [{ kind: 'no-spares' } as const, 'cannot be made again'],
  [{ kind: 'left-out-unknown', cells: 1 } as const, '1 cell that is left out is not'],
  [{ kind: 'left-out-unknown', cells: 3 } as const, '3 cells that are left out are not'],
])('says of %j that %s', (doubt, words) => {
  expect(doubtWords(doubt)).toContain(words)
})
