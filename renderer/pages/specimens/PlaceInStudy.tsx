import type { PlaceInStudy as Place } from '#contract/specimens/specimenRecord.ts'
import { keptForWords } from '#words/programme/pullWords.ts'
import { calendarDayWords } from '#words/units/calendarDays.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { hashOf } from '../../routes/route.ts'

/** The study that a specimen is a block of, the pull that it is kept for while it `waits`, and the glue-up that made it. */
export function PlaceInStudy({ glued, waits }: { glued: Place; waits: boolean }) {
  const { glueUpId, gluedOn, studyId, studyTitle, ageMonths } = glued
  const pulls = useAnswer('pulls.list', studyId !== null && waits ? { studyId } : null).value?.pulls ?? []
  const pull = pulls.find((one) => one.gluedOn === gluedOn && one.ageMonths === ageMonths) ?? null
  return (
    <p className="record-words">
      {studyId === null ? null : (
        <>
          <a href={hashOf({ page: 'study', studyId })}>{studyTitle}</a>, {keptForWords(ageMonths, pull)} ·{' '}
        </>
      )}
      <a href={hashOf({ page: 'glue-up', glueUpId })}>glued on {calendarDayWords(gluedOn)}</a>
    </p>
  )
}
