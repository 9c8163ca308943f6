import type { DegreeProposal } from '#contract/calibration/calibrationAssessment.ts'
import { significance } from '#domain/calibration/fit/degreeProposal.ts'

/** Which degree is proposed and why, in one sentence; what an older record holds is one already. */
export function proposalWords(proposal: DegreeProposal): string {
  const { degree, reason } = proposal
  return typeof reason === 'string' ? reason : `Degree ${degree}${reasonWords(proposal, reason)}`
}

function reasonWords({ degree, tried }: DegreeProposal, reason: Exclude<DegreeProposal['reason'], string>): string {
  switch (reason.code) {
    case 'exact':
      return ': it goes through every reading but for rounding.'
    case 'too-few-steps':
      return ': no step was repeated, and there are too few steps to test a higher degree.'
    case 'next-not-significant':
      return `: no step was repeated, and one degree more does not improve the fit significantly (probability by chance ${percent(reason.pValue)} %).`
    case 'too-few-loads':
      return ': there are too few different loads for a higher degree, or it would turn back between the readings.'
    case 'lower-fit-worse':
      return ': no step was repeated, and every lower degree fits significantly worse.'
    case 'all-lack':
      return ` is the highest that can be tested here, and even it fits worse than the repeats allow: the lack of fit is significant for ${rejectedWords(tried)}. Look for a step that is off.`
    case 'lack-not-significant': {
      const by = percent(tried.find((one) => one.degree === degree)?.lackOfFit?.pValue ?? 1)
      const because = `its lack of fit is not significant (probability by chance ${by} %)`
      const rejected = rejectedWords(tried.filter((one) => one.degree < degree))
      return rejected === ''
        ? `: ${because}, so nothing more is needed.`
        : `: ${because}, while that of lower degrees is: ${rejected}.`
    }
  }
}

/** The degrees that fit significantly worse than the repeats allow. */
function rejectedWords(tried: DegreeProposal['tried']): string {
  return tried
    .flatMap(({ degree, lackOfFit }) =>
      lackOfFit === null || lackOfFit.pValue >= significance
        ? []
        : [`degree ${degree} (${percent(lackOfFit.pValue)} %)`],
    )
    .join(', ')
}

const percent = (probability: number) =>
  probability < 0.0001 ? 'below 0.01' : String(Number((100 * probability).toPrecision(2)))
