/** A seeded stream of random numbers; the same seed gives the same stream on every machine. */
export type RandomStream = {
  /** Uniform in [0, 2^32), whole. */
  whole(): number
  /** Uniform in [0, 1), 32 bits. */
  unit(): number
  /** Uniform in [low, high). */
  between(low: number, high: number): number
  /** Uniform whole number, both ends included. */
  wholeBetween(low: number, high: number): number
  /** Normal with mean 0 and SD 1. */
  normal(): number
  /** Waiting time of a Poisson process with so many events per unit; Infinity when there are none. */
  waiting(eventsPerUnit: number): number
}

/** xoshiro128** from its four words of state (Blackman and Vigna, public domain). */
export function randomFromState(state: readonly [number, number, number, number]): RandomStream {
  let [a, b, c, d] = state
  let spare = 0
  let hasSpare = false

  function whole(): number {
    const scrambled = Math.imul(b, 5)
    const result = Math.imul((scrambled << 7) | (scrambled >>> 25), 9) >>> 0
    const shifted = b << 9
    c ^= a
    d ^= b
    b ^= c
    a ^= d
    c ^= shifted
    d = (d << 11) | (d >>> 21)
    return result
  }

  const unit = () => whole() / 4294967296

  // Marsaglia's polar method: two normals from one accepted point, no tail cut off.
  function normal(): number {
    if (hasSpare) {
      hasSpare = false
      return spare
    }
    for (;;) {
      const x = 2 * unit() - 1
      const y = 2 * unit() - 1
      const square = x * x + y * y
      if (square >= 1 || square === 0) continue
      const factor = Math.sqrt((-2 * Math.log(square)) / square)
      spare = y * factor
      hasSpare = true
      return x * factor
    }
  }

  return {
    whole,
    unit,
    normal,
    between: (low, high) => low + (high - low) * unit(),
    wholeBetween: (low, high) => low + Math.floor((high - low + 1) * unit()),
    waiting: (eventsPerUnit) => (eventsPerUnit > 0 ? -Math.log(1 - unit()) / eventsPerUnit : Number.POSITIVE_INFINITY),
  }
}

/** A stream for a seed and a purpose, so that drawing more of one thing never changes another. */
export function createRandom(seed: number, purpose = 0): RandomStream {
  // The finaliser of MurmurHash3 over a Weyl sequence spreads small seeds over all four words.
  let weyl = (Math.imul(seed | 0, 0x9e3779b1) ^ Math.imul(purpose + 1, 0x85ebca77)) | 0
  const word = () => {
    weyl = (weyl + 0x9e3779b9) | 0
    let mixed = weyl
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b)
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35)
    return mixed ^ (mixed >>> 16)
  }
  // The state must not be all zero; the last bit of one word makes sure of it.
  return randomFromState([word(), word(), word(), word() | 1])
}
