import { useAnswer } from '../../host/useAnswer.ts'
import { Notice } from '../../widgets/Notice.tsx'
import { CurveFigure } from './CurveFigure.tsx'

/** The curve of a break by its number, as its evaluation in force marks it. */
export function RecordedCurve({ breakId }: { breakId: number }) {
  const record = useAnswer('breaks.get', { breakId })
  return (
    <>
      <Notice trouble={record.error} />
      {record.value === null ? null : <CurveFigure record={record.value} />}
    </>
  )
}
