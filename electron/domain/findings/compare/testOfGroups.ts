/** A test statistic with its degrees of freedom and its p value; null where the data have none. */
export type TestOfGroups = {
  readonly statistic: number | null
  readonly df1: number | null
  readonly df2: number | null
  readonly p: number | null
}

/** What there is where the data have no answer. */
export const noTest: TestOfGroups = { statistic: null, df1: null, df2: null, p: null }

/** The test, or none where its statistic is no number (no spread anywhere). Checked: tests/domain/findings/compare/spreadTests.spec.ts. */
export function testOrNone(test: TestOfGroups): TestOfGroups {
  return Number.isFinite(test.statistic) ? test : noTest
}
