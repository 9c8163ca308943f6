import { describe, expect, it } from 'vitest'
import { judgeTrial, totalsByFolder } from './mutants/figures.ts'
import { withLoopGuards } from './mutants/loopGuards.ts'
import { specOf } from './mutants/mutantFiles.ts'
import { mutated, mutationsOf } from './mutants/mutations.ts'
import { tryMutants } from './mutants/trial.ts'

const changesOf = (text: string) => mutationsOf(text).map(({ original, changed }) => `${original} -> ${changed}`)

describe('the mutants of a text', () => {
  it('move numbers by one or by a tenth, and take room for rounding away', () => {
    expect(changesOf('const few = 3')).toEqual(['few = 3 -> few = 4', 'few = 3 -> few = 2'])
    expect(changesOf('const none = 0')).toEqual(['none = 0 -> none = 1'])
    expect(changesOf('const share = 0.9')).toEqual(['share = 0.9 -> share = 0.99', 'share = 0.9 -> share = 0.81'])
    expect(changesOf('const many = 1_024')).toEqual(['many = 1_024 -> many = 1127', 'many = 1_024 -> many = 921'])
    expect(changesOf('const room = 1e-9')).toEqual(['room = 1e-9 -> room = 0', 'room = 1e-9 -> room = 0.000001'])
  })

  it('move the boundary of a comparison, turn it round, and turn signs', () => {
    expect(changesOf('a < b')).toEqual(['a < b -> a <= b', 'a < b -> a >= b'])
    expect(changesOf('a === b && c')).toEqual(['a === b -> a !== b', 'a === b && c -> a === b || c'])
    expect(changesOf('a - -b')).toEqual(['a - -b -> a + -b', 'a - -b -> a - (b)'])
  })

  it('leave out types, texts, what is thrown, steps of loops and halving', () => {
    const text = [
      'type Degree = 1 | 2',
      'let degree: Degree | 3',
      'const words = "some " + count + " of 5"',
      ['const more = `$', '{count + 1} of 5`'].join(''),
      'if (bad) throw new RangeError(name + 5)',
      'i++',
      'const middle = (low + high) >>> 1',
    ]
    expect(changesOf(text.join('\n'))).toEqual([])
  })

  it('are made one at a time, and know their line', () => {
    const text = 'const a = 1\nconst b = 2\n'
    const last = mutationsOf(text).at(-1)!
    expect(last.line).toBe(2)
    expect(mutated(text, last)).toBe('const a = 1\nconst b = 1\n')
  })

  it('have their loops counted on the same lines', () => {
    expect(withLoopGuards('for (const x of y) a(x)\nwhile (b) {\n  c()\n}', 7)).toEqual({
      guarded: 'for (const x of y) {countLoopTurn(7);a(x)}\nwhile (b) {countLoopTurn(8);\n  c()\n}',
      loops: 2,
    })
  })
})

describe('a trial', () => {
  const planted = 'tests/soak/mutants/planted'
  const source = `${planted}/limit.ts`

  it('catches every mutant of a rule that is held by its tests, those that loop for ever too', async () => {
    const { caught, survived } = await tryMutants(source, `${planted}/strongChecks.ts`)
    expect(survived).toEqual([])
    expect(caught.map(({ changed }) => changed)).toContain('i -= 1')
  })

  it('names what a weak test lets pass', async () => {
    const { survived } = await tryMutants(source, `${planted}/weakChecks.ts`)
    expect(survived.map(({ line, original, changed }) => `${line}: ${original} -> ${changed}`)).toEqual(
      expect.arrayContaining([
        '5: values[i]! < 25 -> values[i]! <= 25',
        '5: values[i]! < 25 -> values[i]! < 28',
        '5: values[i]! < 25 -> values[i]! < 22',
      ]),
    )
  })

  it('says nothing where the tests fail without any mutant', async () => {
    await expect(tryMutants(source, `${planted}/failingChecks.ts`)).rejects.toThrow('fails as it stands')
  })

  it('lets all survive that no test is there for', async () => {
    const { caught, survived } = await tryMutants(source, null)
    expect([caught.length, survived.length > 0]).toEqual([0, true])
  })
})

describe('the figures of a trial', () => {
  const [more, fewer] = mutationsOf('const few = 3')
  const trial = { source: 'electron/domain/a/b.ts', caught: [more!], survived: [fewer!] }

  it('name survivors by file and line', () => {
    expect(judgeTrial(trial, [])).toEqual({
      source: 'electron/domain/a/b.ts',
      tried: 2,
      caught: 1,
      equivalent: 0,
      survivors: ['electron/domain/a/b.ts:1: few = 3 -> few = 2'],
      wrongMarks: [],
    })
  })

  it('set apart what is marked as saying the same, and show marks that nothing answers to', () => {
    const mark = { file: trial.source, original: 'few = 3', reason: 'planted' }
    expect(judgeTrial(trial, [{ ...mark, changed: 'few = 2' }])).toMatchObject({
      tried: 1,
      equivalent: 1,
      survivors: [],
      wrongMarks: [],
    })
    expect(judgeTrial(trial, [{ ...mark, changed: 'few = 4' }])).toMatchObject({
      equivalent: 0,
      wrongMarks: ['electron/domain/a/b.ts: few = 3 -> few = 4'],
    })
  })

  it('add up by folder', () => {
    const figures = judgeTrial(trial, [])
    expect(totalsByFolder([figures, figures, { ...figures, source: 'electron/domain/c.ts' }])).toEqual([
      { folder: 'electron/domain/a', tried: 4, caught: 2, equivalent: 0 },
      { folder: 'electron/domain', tried: 2, caught: 1, equivalent: 0 },
    ])
  })
})

describe('the spec of a file', () => {
  it('is its mirror', () => {
    expect(specOf('electron/domain/numbers/quantile.ts')).toBe('tests/domain/numbers/quantile.spec.ts')
    expect(specOf('tests/soak/mutants/planted/limit.ts')).toBeNull()
  })
})
