import { useMemo, useState } from 'react'
import { paperShares, weibullPlot } from '#domain/findings/censored/weibullPlot.ts'
import { isWoodFailure } from '#domain/findings/observation.ts'
import { weibullFigure } from '#figures/findings/weibullFigure.ts'
import { treatmentWords } from '#words/findings/treatmentWords.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { ExportedFigure } from '../../../parts/figures/ExportedFigure.tsx'
import { SelectField } from '../../../widgets/Field.tsx'
import { treatmentOf } from '../findingsQuestions.ts'
import { useOrigin } from '../useOrigin.ts'
import type { FindingsView } from '../view.ts'

const confidence = 0.95

/** The bonds of one group on Weibull paper. */
export function WeibullOfGroup(view: FindingsView) {
  const { found, settings, ageMonths, name } = view
  const { strength } = useQuantities()
  const [chosen, setChosen] = useState('')
  const treatment = { ...treatmentOf(settings), woodFailure: 'censored' } as const
  const origin = useOrigin(view, treatmentWords(treatment))
  const { limitPercent } = treatment
  const counted = found.blocks.filter((one) => one.ageMonths === ageMonths && one.excludedBecause === null)
  const groups = found.groups.map(({ key }) => key).filter((key) => counted.some(({ group }) => group === key))
  const group = groups.includes(chosen) ? chosen : groups[0]
  const [blocks, plot] = useMemo(() => {
    const own = counted
      .filter((one) => one.group === group)
      .map(({ number, strengthMPa, woodFailurePercent }) => ({
        ...{ name: number, strengthMPa },
        held: isWoodFailure({ woodFailurePercent }, { limitPercent }),
      }))
    const strengths = (held: boolean) => own.filter((one) => one.held === held).map((one) => one.strengthMPa)
    return [own, weibullPlot({ failed: strengths(false), censored: strengths(true) }, paperShares, confidence)]
    // What counts follows from these alone
  }, [found, ageMonths, group, limitPercent])
  if (group === undefined) return null
  return (
    <section className="findings-weibull" aria-label="Weibull plot">
      <h2>The bonds of one group</h2>
      <SelectField label="Group" value={group} onChange={(event) => setChosen(event.currentTarget.value)}>
        {groups.map((key) => (
          <option key={key} value={key}>
            {name(key)}
          </option>
        ))}
      </SelectField>
      <ExportedFigure
        draw={(size) => weibullFigure({ name: name(group), blocks, plot, confidence }, strength, size)}
        origin={origin}
      />
      <p className="prose quiet">
        Failures stand in the middle of their Kaplan-Meier step; the line is the maximum likelihood fit, its band from
        the profile likelihood, share by share.
      </p>
    </section>
  )
}
