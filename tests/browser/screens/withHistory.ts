import type { ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'

/** Breaks for the first specimens, so that lists and records have something to show. */
export function withHistory(host: ScriptedHost, count = 9): ScriptedHost {
  for (let i = 0; i < count; i++) {
    host.setBench({ specimen: host.specimens[i]!, next: host.specimens[i + 1]!, waitingSpecimens: 71 - i })
    const peakN = 4310 + ((i * 731) % 1900)
    const breakId = host.addBreak(
      peakN,
      i === 4 ? { flags: ['uncalibrated', 'sampling-too-slow'], samplingBoundPercent: 1.7 } : {},
    ).breakId
    void host.handlers['breaks.assess']({
      breakId,
      woodFailurePercent: (i * 15) % 105,
      failurePattern: i % 2 ? 'CSF' : 'CF',
      note: '',
      by: 'bench 1',
    })
  }
  host.setBench({ specimen: host.specimens[count]!, next: host.specimens[count + 1]!, waitingSpecimens: 71 - count })
  return host
}
