import { folded } from '../../text/naturalOrder.ts'

export type NamedThing = { readonly id: number; readonly name: string }

/** case: they differ by spaces, hyphens and other marks alone. letter: by one letter. */
export type AlikePair = { readonly id: number; readonly otherId: number; readonly differ: 'case' | 'letter' }

/** One letter's difference says nothing of shorter names: "oak" and "ash". */
const shortestName = 5

/**
 * Names that may be two spellings of one: they differ in nothing but case, spaces and hyphens, or by one letter that is left out,
 * added, another one or at
 * another place. A digit more or other is another thing: "shelf 2" and "shelf 3", "E4" and "E5". Each pair once, those
 * that came first first.
 */
export function alikeNames(things: readonly NamedThing[]): AlikePair[] {
  const pairs = new Map<string, AlikePair>()
  const pair = (a: NamedThing, b: NamedThing, differ: AlikePair['differ']) => {
    if (a.id === b.id) return
    const key = a.id < b.id ? `${a.id} ${b.id}` : `${b.id} ${a.id}`
    if (!pairs.has(key)) pairs.set(key, { id: Math.min(a.id, b.id), otherId: Math.max(a.id, b.id), differ })
  }
  const cores = things.map((thing) => ({ thing, core: folded(thing.name).replace(/[^\p{L}\p{N}]+/gu, '') }))
  for (const alike of sharing(cores, ({ core }) => [core]))
    for (const [a, b] of pairsOf(alike)) pair(a.thing, b.thing, 'case')
  const longer = cores.filter(({ core }) => core.length >= shortestName)
  for (const near of sharing(longer, ({ core }) => [core, ...withoutOneLetter(core)]))
    for (const [a, b] of pairsOf(near))
      if (a.core !== b.core && digitsOf(a) === digitsOf(b)) pair(a.thing, b.thing, 'letter')
  return [...pairs.values()]
}

type Core = { readonly thing: NamedThing; readonly core: string }

const digitsOf = ({ core }: Core) => core.replace(/\P{N}+/gu, ' ')

/** Each way to leave one letter out, its place kept, so that a letter at one place is not taken for one at another. */
function withoutOneLetter(core: string): string[] {
  const letters = [...core]
  return letters.flatMap((letter, at) =>
    /\p{L}/u.test(letter) ? [letters.toSpliced(at, 1).join(''), letters.toSpliced(at, 1, '\0').join('')] : [],
  )
}

/** Those that share one of their keys, for each key that more than one has. */
function sharing(cores: readonly Core[], keysOf: (core: Core) => string[]): Core[][] {
  const byKey = new Map<string, Core[]>()
  for (const core of cores)
    for (const key of new Set(keysOf(core))) {
      if (key === '') continue
      const same = byKey.get(key)
      if (same === undefined) byKey.set(key, [core])
      else same.push(core)
    }
  return [...byKey.values()].filter((same) => same.length > 1)
}

function pairsOf(cores: readonly Core[]): [Core, Core][] {
  return cores.flatMap((a, i) => cores.slice(i + 1).map((b): [Core, Core] => [a, b]))
}
