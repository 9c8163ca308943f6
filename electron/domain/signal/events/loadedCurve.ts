/**
 * What the events of a curve are read from: one loading as means of equal count, from its onset to the end of the capture,
 * in bounded memory, and what the detector knows of it. Forces as pushed, after tare; times in s.
 */
export type LoadedCurve = {
  /** Mean times and mean forces, of one length; times rise strictly. The arrays are the owner's and must not be changed. */
  timeS: Float64Array
  force: Float64Array
  /** Samples in each mean. At slow rates every sample is a mean of its own. */
  samplesPerMean: number
  /** Usual interval of two samples. */
  intervalS: number
  /** Level at rest before the loading, and noise SD of single samples there (0: not known). */
  zero: number
  noise: number
  onsetS: number
  /** Highest good sample and its time. */
  peak: number
  peakS: number
  /** Start of the final fall and the load after it; null for an unloading. */
  breakS: number | null
  afterBreak: number | null
  /**
   * Time of the final fall from the raw samples, s: from the last at or above 90 % of the load before it to the first at or
   * below 10 % of the fall above the load after it. null: no break, or it cannot be told.
   */
  fallS: number | null
  /** The reading was at the end of its range: what looks like standing still at the top is none. */
  clipped: boolean
}
