import { isOwnPage } from './pageAddress.ts'

/** stay: load it in the window. external: hand it to the person's browser. deny: do nothing. */
export type NavigationDecision = 'stay' | 'external' | 'deny'

/** Where an address that the page wants to open may go. Only the page itself stays; only plain https goes outside. */
export function decideNavigation(address: string): NavigationDecision {
  if (isOwnPage(address)) return 'stay'
  const url = URL.parse(address)
  if (url === null || url.protocol !== 'https:' || url.username !== '' || url.password !== '') return 'deny'
  return 'external'
}
