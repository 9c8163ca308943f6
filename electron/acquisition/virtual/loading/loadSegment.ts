/**
 * A stretch of the load on a specimen, with u the seconds since its start:
 *
 *   F(u) = c0 + c1 u + c2 u² + c3 u³  +  fallN exp(−u/fallS)  −  ringN exp(−u/ringS) sin(2π ringHz u)
 *
 * The polynomial is the press driving specimen and frame; the first exponential is load that is let go (a crack, a
 * relaxing joint, an opened valve); the last term is frame and cell swinging after a sudden release.
 */
export type LoadSegment = {
  startS: number
  durationS: number
  c0: number
  c1: number
  c2: number
  c3: number
  fallN: number
  fallS: number
  ringN: number
  ringS: number
  ringHz: number
}

/** Force in N, `u` seconds after the start of the segment. */
export function forceAt(segment: LoadSegment, u: number): number {
  let forceN = segment.c0 + u * (segment.c1 + u * (segment.c2 + u * segment.c3))
  if (segment.fallN !== 0) forceN += segment.fallN * Math.exp(-u / segment.fallS)
  if (segment.ringN !== 0)
    forceN -= segment.ringN * Math.exp(-u / segment.ringS) * Math.sin(2 * Math.PI * segment.ringHz * u)
  return forceN
}

/** Builds the stretches of one loading one after another; every stretch starts at the force where the last one ended. */
export class LoadBuilder {
  readonly segments: LoadSegment[] = []
  timeS = 0
  forceN = 0

  private add(durationS: number, shape: Partial<LoadSegment>): void {
    const segment: LoadSegment = {
      startS: this.timeS,
      durationS,
      c0: 0,
      c1: 0,
      c2: 0,
      c3: 0,
      fallN: 0,
      fallS: 1,
      ringN: 0,
      ringS: 1,
      ringHz: 0,
      ...shape,
    }
    this.segments.push(segment)
    this.timeS += durationS
    this.forceN = forceAt(segment, durationS)
  }

  /** The drive goes on: slope in N/s and its change in N/s². */
  drive(durationS: number, slope: number, slopeChange = 0): void {
    this.add(durationS, { c0: this.forceN, c1: slope, c2: slopeChange / 2 })
  }

  /** One stroke of a hand pump over `strokeS` that would lift the load by `liftN`, cut off after `durationS`. */
  stroke(durationS: number, strokeS: number, liftN: number): void {
    this.add(durationS, { c0: this.forceN, c2: (3 * liftN) / strokeS ** 2, c3: (-2 * liftN) / strokeS ** 3 })
  }

  /** Load is let go towards `targetN` with time constant `fallS`, the drive going on at `slope`. */
  letGo(durationS: number, targetN: number, fallS: number, slope = 0): void {
    this.add(durationS, { c0: targetN, c1: slope, fallN: this.forceN - targetN, fallS })
  }

  /** A sudden crack down to `targetN`, after which frame and cell swing for a while. */
  crack(
    durationS: number,
    targetN: number,
    crack: { fallS: number; ringShare: number; ringS: number; ringHz: number },
    slope = 0,
  ): void {
    const fallN = this.forceN - targetN
    this.add(durationS, {
      c0: targetN,
      c1: slope,
      fallN,
      fallS: crack.fallS,
      ringN: crack.ringShare * fallN,
      ringS: crack.ringS,
      ringHz: crack.ringHz,
    })
  }
}
