import type { HeadFinding, VerifyReport } from '#contract/keeping/archive.ts'
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

const whatIsWrong: Readonly<Record<HeadFinding, string>> = {
  shorter:
    'This file lacks records that it held before: it was cut short, its journal is missing, or an older copy was put back.',
  different: 'This file holds other records than before: some were changed, or another copy was put in its place.',
  other: 'Another archive lay in this place before: two were swapped, or the file was replaced.',
}

/** What is said where an archive no longer holds the head that the program kept of its chain. */
export function chainFindingWords(finding: HeadFinding): string {
  return `${whatIsWrong[finding]} Compare it with your backups. If it is meant to be so, give the command breakledger verify --accept-head.`
}
