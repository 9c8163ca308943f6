import type { FindingsOptions } from '#contract/findings/options.ts'
import { percentWords, withoutEndingZeros, writeSignificant } from '../units/numbers.ts'

type Treatment = Pick<FindingsOptions, 'woodFailure' | 'limitPercent' | 'adjustFactor'>

/** How torn wood is treated, with whatever number that has, as it stands beside every number that it touched. */
export function treatmentWords({ woodFailure, limitPercent, adjustFactor }: Treatment): string {
  const limit = percentWords(limitPercent)
  switch (woodFailure) {
    case 'observed':
      return 'as observed'
    case 'bond-only':
      return `bond failures only (below ${limit} torn wood)`
    case 'censored':
      return `censored (from ${limit} torn wood on, the bond held at least that much)`
    case 'adjusted':
      return `adjusted (strength x (1 + ${withoutEndingZeros(writeSignificant(adjustFactor, 3))} x torn wood / 100))`
  }
}

/** The same for one of several treatments beside each other, with the distribution of a censored one. */
export function treatedName(treatment: Treatment & { distribution: FindingsOptions['distribution'] }): string {
  return treatment.woodFailure === 'censored' && treatment.distribution !== null
    ? `censored from ${percentWords(treatment.limitPercent)} torn wood on, ${distributionNames[treatment.distribution]}`
    : treatmentWords(treatment)
}

/** A treatment as a list of several offers it, with the distribution of a censored one. */
export function treatmentChoice({ woodFailure, distribution }: Pick<FindingsOptions, 'woodFailure' | 'distribution'>) {
  if (woodFailure !== 'censored') return treatmentChoices[woodFailure]
  return distribution === null ? treatmentChoices.censored : `Censored, ${distributionNames[distribution]}`
}

const treatmentChoices = {
  observed: 'As observed',
  'bond-only': 'Bond failures only',
  censored: 'Bond at least as strong (censored)',
  adjusted: 'Adjusted',
} as const

const distributionNames = { normal: 'normal', lognormal: 'lognormal', weibull: 'Weibull' } as const

/** By how many places a group moved, beside its place: nothing where it did not. */
export function movedWords(up: number | null): string {
  if (up === null || up === 0) return ''
  return up > 0 ? ` (up ${up})` : ` (down ${-up})`
}
