import { describe, expect, it } from 'vitest'
import { type FindingKind, findingLine } from '#contract/findings/lines.ts'
import { findingsOptions } from '#contract/findings/options.ts'
import type { GroupValues } from '#domain/findings/compare/groupValues.ts'
import { comparisonLines } from '#domain/findings/lines/comparisonLines.ts'
import { groupsOf, handbookGroups } from '../knownStudies.ts'

const linesOf = (groups: readonly GroupValues[], given: object = {}, wanted?: FindingKind) => [
  ...comparisonLines(groups, 12, findingsOptions.parse(given), (kind) => wanted === undefined || kind === wanted),
]

describe('the lines that compare the groups of one age', () => {
  it('are lines of the contract with their age', () => {
    for (const line of linesOf(handbookGroups, { reference: '1', marginPercent: 10 })) {
      expect(findingLine.parse(line)).toEqual(line)
      expect(line.ageMonths).toBe(12)
    }
  })

  it('hold all pairs by three methods with their letters', () => {
    const pairs = linesOf(handbookGroups).filter((line) => line.kind === 'pair')
    expect(pairs).toHaveLength(3 * 6)
    const letters = linesOf(handbookGroups).filter((line) => line.kind === 'letters')
    expect(letters.map(({ method }) => method)).toEqual(['tukey-kramer', 'games-howell', 'dunn-holm'])
    // NIST/SEMATECH e-Handbook 7.4.7.1: 2 and 3 differ from 1 and 4.
    expect(letters[0]!.letters).toEqual({ 1: 'b', 2: 'a', 3: 'a', 4: 'b' })
  })

  it('share out the first place', () => {
    const shares = linesOf(handbookGroups).flatMap((line) => (line.kind === 'rank' ? [line.firstShare!] : []))
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9)
  })

  it('compute only what is asked for', () => {
    expect(new Set(linesOf(handbookGroups, {}, 'means-test').map(({ kind }) => kind))).toEqual(new Set(['means-test']))
  })

  it.each([
    ['one group', groupsOf([1, 2]), {}, 'means-test one-group'],
    ['a group of one', groupsOf([1, 2], [3]), {}, 'spread-test one-block-left-out'],
    ['a group of equal blocks', groupsOf([1, 2], [3, 3]), {}, 'spread-test no-spread-no-test'],
    [
      'no reference where one is needed',
      groupsOf([1, 2], [3, 4]),
      { only: ['against-reference'] },
      'against-reference no-reference-named',
    ],
    ['a reference without blocks', groupsOf([1, 2], [3, 4]), { reference: 'X' }, 'against-reference no-reference'],
    ['equivalence without a margin', groupsOf([1, 2], [3, 4]), { only: ['equivalence'] }, 'equivalence no-margin'],
    ['three groups', groupsOf([1, 2], [3, 4], [5, 6]), {}, 'shrunken-mean few-groups'],
    ['no spread', groupsOf([1, 1], [3, 3], [5, 5], [7, 7]), {}, 'shrunken-mean no-spread'],
  ])('say in a note what is missing with %s', (_what, groups, given, note) => {
    const notes = linesOf(groups, given).flatMap((line) => (line.kind === 'note' ? [`${line.about} ${line.code}`] : []))
    expect(notes).toContain(note)
  })

  it.each(['rank', 'pair', 'equivalence'] as const)('say beside %s what one block cannot show', (kind) => {
    const [note] = linesOf(groupsOf([1, 2], [3]), { marginPercent: 10 }, kind)
    expect(note).toMatchObject({ kind: 'note', about: kind, code: 'one-block-left-out', group: '2' })
    expect(linesOf(groupsOf([1, 2]), {}, kind)).toMatchObject([{ about: kind, code: 'one-group' }])
  })

  it('have no equivalence without a margin and no reference without its name', () => {
    const kinds = new Set(linesOf(handbookGroups).map(({ kind }) => kind))
    expect([kinds.has('equivalence'), kinds.has('against-reference')]).toEqual([false, false])
  })
})
