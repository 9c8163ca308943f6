import { useEffect } from 'react'
import type { GlueUpDraft } from '#contract/programme/glueUpDraft.ts'
import type { GlueUpPlan } from '#contract/programme/glueUpProcedures.ts'
import { countOf } from '#words/units/counts.ts'
import { useAction } from '../../../host/useAction.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { SignedBy } from '../../../parts/decisions/SignedBy.tsx'
import { useSigner } from '../../../parts/decisions/signer.ts'
import { Form } from '../../../widgets/forms/Form.tsx'
import { goOnWithEnter } from '../../../widgets/forms/goOnWithEnter.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { Switch } from '../../../widgets/Switch.tsx'
import { AdhesiveNotes } from './AdhesiveNotes.tsx'
import { CaliperTable } from './CaliperTable.tsx'
import { GlueUpFieldset } from './GlueUpFieldset.tsx'
import { forgetDraft, keepDraft } from './glueUpDraft.ts'
import { OwnBlockFields } from './OwnBlockFields.tsx'
import { useGlueUp } from './useGlueUp.ts'
import { WhichBlocks } from './WhichBlocks.tsx'

type Parts = {
  archive: string
  studyId: number | null
  draft: GlueUpDraft | null
  onStored(glueUpId: number): void
}

/** The form of one glue-up. */
export function GlueUpForm(parts: Parts) {
  const { studyId } = parts
  const plan = useAnswer('glueUps.plan', studyId === null ? null : { studyId })
  if (studyId !== null && plan.value === null) return <Notice trouble={plan.error} />
  return <PlannedForm {...parts} plan={plan.value} />
}

function PlannedForm({ archive, studyId, draft, plan, onStored }: Parts & { plan: GlueUpPlan | null }) {
  const { length } = useQuantities()
  const signer = useSigner()
  const add = useAction('glueUps.add')
  const glueUp = useGlueUp(plan, draft)
  const { rows, planned, kept } = glueUp
  useEffect(() => {
    if (Object.keys(kept.cells).length > 0) keepDraft({ archive, studyId, ...kept })
  }, [archive, studyId, kept])

  async function submit(): Promise<boolean> {
    const asked = glueUp.read()
    if (asked === null) return false
    const stored = await add.run({ studyId, by: signer, ...asked })
    if (stored === null) return false
    forgetDraft()
    onStored(stored.glueUpId)
    return true
  }

  return (
    <Form onSubmit={submit} className="form glue-form" focusFirst={false}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: Enter goes on to the next field, so that no half-filled form is stored */}
      <div className="glue-sections" onKeyDown={goOnWithEnter}>
        <section aria-labelledby="glue-which">
          <h2 id="glue-which">Which blocks</h2>
          {plan === null ? (
            <OwnBlockFields form={glueUp.own} errors={glueUp.errors.own} />
          ) : plan.blocks.length === 0 ? (
            <p className="empty-words">Every block of this study is glued.</p>
          ) : (
            <WhichBlocks
              blocks={plan.blocks}
              series={glueUp.series}
              ages={glueUp.ages}
              onSeries={glueUp.setSeries}
              onAges={glueUp.setAges}
            />
          )}
        </section>
        <section aria-labelledby="glue-how">
          <h2 id="glue-how">How they are glued</h2>
          <p className="running-words">
            Adhesives and solvents: the maker’s safety sheet says what to wear, how to air the room and what to do with
            leftovers.
          </p>
          <AdhesiveNotes adhesives={glueUp.adhesives} />
          <GlueUpFieldset
            form={glueUp.texts}
            errors={glueUp.errors.texts}
            adhesives={glueUp.adhesives}
            exposures={glueUp.exposures}
          />
        </section>
        <section aria-labelledby="glue-sizes">
          <h2 id="glue-sizes">Sizes</h2>
          {rows.length === 0 ? (
            <p className="empty-words">Choose the blocks first.</p>
          ) : (
            <>
              <p className="prose">
                Measure, send with Enter, next cell; length first, then width. Fractions and decimal commas are read,
                and a unit behind the number wins. {plannedWords(planned, length.text)}
              </p>
              <CaliperTable blocks={rows} cells={glueUp.cells} planned={planned} onCells={glueUp.setCells} />
              {planned.lengthMm === null || planned.widthMm === null ? null : (
                <Switch
                  label="Blocks that were not measured"
                  on={glueUp.asPlanned}
                  onChange={glueUp.setAsPlanned}
                  onWord="get the planned size, and their notes say so"
                  offWord="stay without a size"
                />
              )}
            </>
          )}
        </section>
      </div>
      <Notice trouble={add.error} onDismiss={add.dismiss} />
      <div className="form-buttons">
        <button type="submit" className="button button-primary" aria-disabled={add.pending || rows.length === 0}>
          {add.pending ? 'Storing …' : `Store the glue-up of ${countOf(rows.length, 'block')}`}
        </button>
        <SignedBy />
      </div>
    </Form>
  )
}

function plannedWords(
  { lengthMm, widthMm }: { lengthMm: number | null; widthMm: number | null },
  text: (mm: number) => string,
) {
  return lengthMm === null || widthMm === null ? '' : `Planned: ${text(lengthMm)} × ${text(widthMm)}.`
}
