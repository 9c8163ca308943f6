import { useState } from 'react'
import { signedAsWords } from '#words/settings/signatureWords.ts'
import { rememberSigner, useSigner } from './signer.ts'
import './signedBy.css'

/** In whose name the next entry is recorded, and a way to change that for the rest of the session. */
export function SignedBy() {
  const signer = useSigner()
  const [typed, setTyped] = useState<string | null>(null)
  function done(name: string): void {
    rememberSigner(name)
    setTyped(null)
  }
  if (typed === null)
    return (
      <p className="signed-by">
        {signedAsWords(signer)}{' '}
        <button type="button" className="button button-quiet button-small" onClick={() => setTyped(signer)}>
          {signer === '' ? 'Enter a name' : 'Change the name'}
        </button>
      </p>
    )
  return (
    <label className="signed-by">
      Name or initials
      <input
        // biome-ignore lint/a11y/noAutofocus: the person has just asked to type here
        autoFocus
        value={typed}
        maxLength={200}
        onChange={(event) => setTyped(event.currentTarget.value)}
        onBlur={(event) => done(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key === 'Escape') setTyped(null)
          if (event.key !== 'Enter') return
          event.preventDefault()
          done(event.currentTarget.value)
        }}
      />
    </label>
  )
}
