import { useAnswer } from '../../host/useAnswer.ts'
import { hashOf } from '../../routes/route.ts'

/** The way back to the study that a page was opened for, among the other links of its trail; nothing where it is of none. */
export function StudyCrumb({ studyId }: { studyId: number | null | undefined }) {
  const studies = useAnswer('studies.list', studyId == null ? null : {}).value?.rows ?? []
  if (studyId == null) return null
  const title = studies.find((one) => one.studyId === studyId)?.fields.title ?? `Study ${studyId}`
  return (
    <>
      <a href={hashOf({ page: 'studies' })}>Studies</a>
      <a href={hashOf({ page: 'study', studyId })}>{title}</a>
    </>
  )
}
