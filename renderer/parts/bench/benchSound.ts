import type { BenchState } from '#contract/bench/bench.ts'

/** What is to be heard. */
export type Cue = 'loading' | 'broke' | 'warning' | 'alarm'

type Tone = { hertz: number; fromS: number; lengthS: number }

const cues: Record<Cue, { tones: readonly Tone[]; loudness: number }> = {
  loading: { tones: [{ hertz: 520, fromS: 0, lengthS: 0.07 }], loudness: 0.12 },
  broke: {
    tones: [
      { hertz: 660, fromS: 0, lengthS: 0.1 },
      { hertz: 440, fromS: 0.13, lengthS: 0.18 },
    ],
    loudness: 0.2,
  },
  warning: {
    tones: [
      { hertz: 880, fromS: 0, lengthS: 0.12 },
      { hertz: 880, fromS: 0.2, lengthS: 0.12 },
    ],
    loudness: 0.3,
  },
  alarm: {
    tones: [
      { hertz: 980, fromS: 0, lengthS: 0.22 },
      { hertz: 700, fromS: 0.24, lengthS: 0.22 },
      { hertz: 980, fromS: 0.48, lengthS: 0.22 },
    ],
    loudness: 0.6,
  },
}

/** Which cue a change of the bench asks for; the gravest wins, null for none. */
export function cueOf(
  before: Pick<BenchState, 'phase' | 'overload'>,
  now: Pick<BenchState, 'phase' | 'overload'>,
): Cue | null {
  if (now.overload === 'alarm' && before.overload !== 'alarm') return 'alarm'
  if (now.overload === 'warning' && before.overload === 'none') return 'warning'
  if (now.phase === before.phase) return null
  if (now.phase === 'broke') return 'broke'
  return now.phase === 'loading' ? 'loading' : null
}

let context: AudioContext | null = null

/** Plays a cue. Silent while the browser has not been touched yet: it then forbids sound. */
export function playCue(cue: Cue): void {
  context ??= new AudioContext()
  if (context.state === 'suspended') void context.resume()
  const { tones, loudness } = cues[cue]
  for (const { hertz, fromS, lengthS } of tones) {
    const oscillator = new OscillatorNode(context, { frequency: hertz, type: cue === 'alarm' ? 'square' : 'sine' })
    const gain = new GainNode(context, { gain: 0 })
    const start = context.currentTime + fromS
    // A few milliseconds of rise and fall: a tone cut off sharply clicks.
    gain.gain.setValueAtTime(0, start)
    gain.gain.linearRampToValueAtTime(loudness, start + 0.01)
    gain.gain.setValueAtTime(loudness, start + lengthS - 0.02)
    gain.gain.linearRampToValueAtTime(0, start + lengthS)
    oscillator.connect(gain).connect(context.destination)
    oscillator.start(start)
    oscillator.stop(start + lengthS)
  }
}
