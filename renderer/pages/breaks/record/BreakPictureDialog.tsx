import { useMemo } from 'react'
import type { BreakSummary } from '#contract/breaks/break.ts'
import type { KeptPicture } from '#contract/specimens/pictureProcedures.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { WoodPictureDialog } from '../../../parts/pictures/WoodPictureDialog.tsx'

/** The wood failure of a photographed face of a break, whose bonded area has the sides of its specimen. */
export function BreakPictureDialog({
  summary: { specimenId },
  picture,
  onDecided,
  onClose,
}: {
  summary: BreakSummary
  picture: KeptPicture
  onDecided(woodFailurePercent: number): void
  onClose(): void
}) {
  const specimen = useAnswer('specimens.get', specimenId === null ? null : { specimenId })
  const { overlapLengthMm = null, overlapWidthMm = null } = specimen.value?.current.fields ?? {}
  const sides = useMemo(
    () =>
      overlapLengthMm === null || overlapWidthMm === null
        ? null
        : { lengthMm: overlapLengthMm, widthMm: overlapWidthMm },
    [overlapLengthMm, overlapWidthMm],
  )
  return <WoodPictureDialog picture={picture} sides={sides} onDecided={onDecided} onClose={onClose} />
}
