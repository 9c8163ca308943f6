import type { FindingLine } from '#contract/findings/lines.ts'

/** A part of the findings that rests on nothing but what its key says: two parts with one key hold the same. */
export type FindingUnit<Line = FindingLine> = { readonly key: string; lines(): Iterable<Line> }
