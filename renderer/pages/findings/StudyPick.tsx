import { useAnswer } from '../../host/useAnswer.ts'
import { SelectField } from '../../widgets/Field.tsx'

/** Of which study it is asked; nothing to choose where there is none. */
export function StudyPick({ studyId, onStudy }: { studyId: number | null; onStudy(studyId: number | null): void }) {
  const studies = useAnswer('studies.list', {}).value?.rows ?? []
  if (studies.length === 0) return null
  return (
    <SelectField
      label="Study"
      value={studyId ?? ''}
      onChange={(event) => onStudy(Number(event.currentTarget.value) || null)}
    >
      <option value="">all blocks</option>
      {studies.map((study) => (
        <option key={study.studyId} value={study.studyId}>
          {study.fields.title}
        </option>
      ))}
    </SelectField>
  )
}
