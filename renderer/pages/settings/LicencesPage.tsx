import { useServedText } from '../../host/useServedText.ts'
import { hashOf } from '../../routes/route.ts'
import { Notice } from '../../widgets/Notice.tsx'

/** The licence texts of the program and of the packages in it, as they were collected when it was built. */
export function LicencesPage() {
  const texts = useServedText('licences.txt')
  return (
    <div className="plain-page">
      <div>
        <p className="crumb">
          <a href={hashOf({ page: 'settings' })}>Settings</a>
        </p>
        <h1>Licences</h1>
      </div>
      <Notice trouble={texts.error} />
      {texts.value === null ? null : <pre className="licence-texts">{texts.value}</pre>}
    </div>
  )
}
