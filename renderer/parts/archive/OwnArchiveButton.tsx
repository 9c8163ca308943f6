import { useEffect } from 'react'
import { useHost, useStore } from '../../host/hostContext.ts'
import { useArchiveSwitch } from './useArchiveSwitch.ts'

/** While the demo is open: the way to the person's own archive. What goes wrong with it is told where the page tells trouble. */
export function OwnArchiveButton() {
  const host = useHost()
  const info = useStore(host.info)
  const { switchTo, pending, error } = useArchiveSwitch()
  useEffect(() => {
    if (error !== null) host.trouble.set(error)
  }, [error, host])
  if (info === null || !info.demo || !info.capabilities.includes('switch-archive')) return null
  return (
    <button
      type="button"
      className="button button-small own-archive"
      aria-disabled={pending}
      onClick={() => void switchTo({ kind: 'own' }, { page: 'connect' })}
    >
      Open my own archive
    </button>
  )
}
