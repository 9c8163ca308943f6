import { formatReached } from '#contract/keeping/formatReached.ts'
import { plain } from './columns.ts'
import { recordKind } from './recordKind.ts'
import { ofItsOwner } from './recordTable.ts'

/** The formats that an archive had, since when and by which program. */
export const formatKind = recordKind({
  name: 'format',
  noun: 'format version',
  table: 'format_history',
  identity: ofItsOwner('formatVersion'),
  instant: 'reachedAt',
  schema: formatReached,
  columns: { reachedAt: plain, program: plain },
})
