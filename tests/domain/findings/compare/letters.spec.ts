import { describe, expect, it } from 'vitest'
import { sharedLetters } from '#domain/findings/compare/letters.ts'
import { createRandom } from '#domain/numbers/random.ts'

describe('letters', () => {
  it('are those that R multcomp cld prints for a chain', () => {
    // Strongest first; only the ends can be told apart.
    expect(sharedLetters(['x', 'y', 'z'], [['x', 'z']])).toEqual({ x: 'a', y: 'ab', z: 'b' })
  })

  it('are one for all where nothing can be told apart, and one each where everything can', () => {
    expect(sharedLetters(['x', 'y'], [])).toEqual({ x: 'a', y: 'a' })
    expect(
      sharedLetters(
        ['x', 'y', 'z'],
        [
          ['x', 'y'],
          ['x', 'z'],
          ['y', 'z'],
        ],
      ),
    ).toEqual({ x: 'a', y: 'b', z: 'c' })
  })

  it('are shared by exactly those pairs that cannot be told apart, in 200 random patterns', () => {
    for (let seed = 0; seed < 200; seed++) {
      const random = createRandom(seed)
      const groups = Array.from({ length: random.wholeBetween(2, 9) }, (_, i) => `g${i}`)
      const pairs = groups.flatMap((a, i) => groups.slice(i + 1).map((b) => [a, b] as const))
      const apart = pairs.filter(() => random.unit() < 0.5)
      const letters = sharedLetters(groups, apart)
      for (const [a, b] of pairs) {
        const shared = [...letters[a]!].some((letter) => letters[b]!.includes(letter))
        expect([seed, a, b, shared]).toEqual([seed, a, b, !apart.some(([c, d]) => c === a && d === b)])
      }
    }
  })

  it('take no notice of a group that is not there', () => {
    expect(sharedLetters(['x'], [['x', 'gone']])).toEqual({ x: 'a' })
  })
})
