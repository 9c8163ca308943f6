import { benchState, liveFrame } from './bench.ts'

/** What the bench says unasked. */
export const benchEvents = { 'bench.state': benchState, 'live.frame': liveFrame }
