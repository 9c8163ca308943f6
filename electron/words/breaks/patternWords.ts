import type { FailurePattern } from '#contract/breaks/assessment.ts'

export const patternNames: Record<FailurePattern, string> = {
  SF: 'substrate failure',
  CSF: 'cohesive failure of the substrate',
  DF: 'delamination',
  CF: 'cohesion failure, in the adhesive',
  SCF: 'special cohesion failure, near one face',
  AF: 'adhesion failure',
  ACFP: 'adhesion and cohesion failure with peel',
}

/** Shown in the order from the wood to the bond. */
export const patternOrder: readonly FailurePattern[] = ['SF', 'CSF', 'DF', 'CF', 'SCF', 'AF', 'ACFP']
