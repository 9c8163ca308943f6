import type { Action } from '#renderer/host/useAction.ts'
import { SignedDialog } from './SignedDialog.tsx'

const kinds = {
  'set-aside': {
    title: 'Set aside',
    explains:
      'It stays in the archive with its curve, but is not used in results. You can take it back in at any time.',
    button: 'Set aside',
    common: ['specimen slipped', 'wrong block', 'fixture touched', 'loaded too fast', 'glue-up fault'],
  },
  'take-back': {
    title: 'Take back in',
    explains: 'It counts in results again. The earlier decision stays in its history.',
    button: 'Take back in',
    common: ['set aside by mistake', 'checked the curve'],
  },
} as const

/** Asks who decides and why. Nothing is deleted: the decision is added to the break's history. */
export function SignatureDialog({
  kind,
  subject,
  action,
  input,
  onClose,
}: {
  kind: keyof typeof kinds
  subject: string
  action: Action<'breaks.setAside'> | Action<'breaks.takeBack'>
  input: { breakId: number }
  onClose(): void
}) {
  const words = kinds[kind]
  return (
    <SignedDialog
      words={{
        ...words,
        title: `${words.title}: ${subject}`,
        reasonMissing: 'Say why; it stands beside the break from now on.',
      }}
      sign={async (signature) => (await action.run({ ...input, ...signature })) !== null}
      pending={action.pending}
      error={action.error}
      onClose={onClose}
    />
  )
}
