/** A warning above 90 % of capacity, an alarm above 100 %. */
export type OverloadLevel = 'none' | 'warning' | 'alarm'

const warningShare = 0.9
const alarmShare = 1
/** A level stays on for this long after the load was last above it, so that a passing peak is not missed, s. */
const holdS = 5

/** Watches the force against the capacity, armed or not, in tension as in compression. */
export function createOverloadWatch() {
  let highestShare: number | null = null
  let level: OverloadLevel = 'none'
  let aboveAtS = Number.NEGATIVE_INFINITY

  function look(forceN: number, capacityN: number | null, nowS: number, capturing: boolean): void {
    if (capacityN === null) {
      highestShare = null
      level = 'none'
      return
    }
    const share = Math.abs(forceN) / capacityN
    highestShare = capturing ? Math.max(highestShare ?? 0, share) : share
    const now: OverloadLevel = share > alarmShare ? 'alarm' : share > warningShare ? 'warning' : 'none'
    if (now === 'alarm' || (now === 'warning' && level !== 'alarm')) {
      level = now
      aboveAtS = nowS
    } else if (now === 'warning') aboveAtS = nowS
    else if (nowS - aboveAtS >= holdS) level = 'none'
  }

  return {
    /** Takes the largest force since the last look, in N after tare. */
    look,
    /** A capture begins: the highest share counts from here. */
    begin() {
      highestShare = null
    },
    level: () => level,
    share: () => highestShare,
  }
}
