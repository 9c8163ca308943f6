import type { VerifyReport } from '#contract/keeping/archive.ts'
import { countOf } from '../units/counts.ts'

/** How much of an archive was looked at. */
export function checkedWords({ ledgerEntries, breaks, curves, samples }: VerifyReport): string {
  const counted = [
    countOf(ledgerEntries, 'ledger entry', 'ledger entries'),
    countOf(breaks, 'break'),
    countOf(curves, 'curve'),
  ]
  return `${counted.join(', ')} and ${countOf(samples, 'sample')} were checked`
}

/** What was found: sound, or how many faults. */
export function soundWords({ faults }: VerifyReport): string {
  return faults.length === 0 ? 'sound' : countOf(faults.length, 'fault')
}
