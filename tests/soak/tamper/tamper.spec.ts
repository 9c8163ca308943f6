import { expect, test } from 'vitest'
import { attacks } from './attacks.ts'
import { attackAll } from './tamper.ts'

// The smaller share of "npm run soak -- tamper".

const named = [
  'nothing, after a kill',
  'the last record is cut off',
  'a record is edited and all is hashed again',
  'one bit of the journal flips, at its start',
  'the last record is cut off and the kept heads deleted',
  'two archives are swapped',
]

test('an archive that is not as it was is noticed where it must be, and one that is, nowhere', async () => {
  const tried = attacks.filter(({ name }) => named.includes(name))
  expect(tried).toHaveLength(named.length)
  const lines: string[] = []
  expect(await attackAll(tried, (line) => lines.push(line)), lines.join('\n')).toBe(0)
})
