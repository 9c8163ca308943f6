import { globSync, readFileSync } from 'node:fs'
import { expect, it } from 'vitest'

/** Buttons that lose the focus to the body of the page as soon as they are disabled. */
const disabledButtons = (source: string) => source.match(/<button\b(?:=>|[^>])*?\sdisabled\b/g) ?? []

it('finds a disabled button, and none in one that is marked as unavailable', () => {
  expect(disabledButtons('<button type="button" onClick={() => x()} disabled={pending}>')).toHaveLength(1)
  expect(disabledButtons('<button type="button" aria-disabled={pending}><input disabled>')).toEqual([])
})

it.each(globSync('renderer/**/*.tsx'))('%s marks buttons as unavailable, so that they keep the focus', (path) =>
  expect(disabledButtons(readFileSync(path, 'utf8'))).toEqual([]),
)
