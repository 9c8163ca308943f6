import { type ComponentProps, useState } from 'react'

/** A summary with what opens below it, which is there, and asks for what it shows, only while it is open. */
export function Disclosure({ summary, children, ...rest }: ComponentProps<'details'> & { summary: string }) {
  const [isOpen, setIsOpen] = useState(false)
  return (
    <details {...rest} onToggle={(event) => setIsOpen(event.currentTarget.open)}>
      <summary>{summary}</summary>
      {isOpen ? children : null}
    </details>
  )
}
