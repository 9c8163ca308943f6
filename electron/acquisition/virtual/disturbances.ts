import { createRandom } from '#domain/numbers/random.ts'

/** What reaches the cell or its wires without any specimen; forces in N. */
export type DisturbanceOptions = {
  seed: number
  /** SD of the converter's noise, N. */
  noiseN: number
  /** Amplitude of mains hum at 50 Hz, N. */
  humN: number
  /** SD of the slow thermal wandering of the zero, N. */
  driftN: number
  /** Somebody bumps the bench so many times an hour. */
  knocksPerHour: number
}

export type Disturbances = {
  /** Everything but noise at a time that must not fall, N. */
  at(timeS: number): number
  /** Drift alone at the time last asked for, N: what a tare taken then would remove. */
  driftN(): number
  /** One value of converter noise, N. */
  noise(): number
}

const driftKnotS = 5
const driftMemoryS = 900
/** A knock has died away (below 1/3000) after so many time constants. */
const knockLength = 8

/** Hum, thermal drift and knocks, each from its own stream of random numbers. */
export function createDisturbances(options: DisturbanceOptions): Disturbances {
  const drift = createRandom(options.seed, 11)
  const knocks = createRandom(options.seed, 12)
  const noise = createRandom(options.seed, 13)
  const humPhase = createRandom(options.seed, 14).between(0, 2 * Math.PI)

  // An Ornstein-Uhlenbeck walk on knots, straight between them.
  const kept = Math.exp(-driftKnotS / driftMemoryS)
  const step = options.driftN * Math.sqrt(1 - kept * kept)
  let knotS = 0
  let knotN = 0
  let nextKnotN = step * drift.normal()
  let driftNow = 0

  let knockS = knocks.waiting(options.knocksPerHour / 3600)
  let knockEndS = Number.NEGATIVE_INFINITY
  let knock = { startS: 0, forceN: 0, hz: 0, decayS: 1 }

  return {
    at(timeS) {
      while (timeS >= knotS + driftKnotS) {
        knotS += driftKnotS
        knotN = nextKnotN
        nextKnotN = kept * knotN + step * drift.normal()
      }
      driftNow = knotN + ((nextKnotN - knotN) * (timeS - knotS)) / driftKnotS
      let forceN = driftNow
      if (options.humN !== 0) forceN += options.humN * Math.sin(2 * Math.PI * 50 * timeS + humPhase)
      while (timeS >= knockS) {
        knock = {
          startS: knockS,
          forceN: Math.exp(knocks.between(Math.log(5), Math.log(200))) * (knocks.unit() < 0.5 ? -1 : 1),
          hz: knocks.between(15, 120),
          decayS: knocks.between(0.01, 0.08),
        }
        knockEndS = knockS + knockLength * knock.decayS
        knockS += knocks.waiting(options.knocksPerHour / 3600)
      }
      if (timeS < knockEndS) {
        const u = timeS - knock.startS
        forceN += knock.forceN * Math.exp(-u / knock.decayS) * Math.sin(2 * Math.PI * knock.hz * u)
      }
      return forceN
    },
    driftN: () => driftNow,
    noise: () => options.noiseN * noise.normal(),
  }
}
