/** Where the page lives in the desktop shell: a scheme of our own, so that it is neither a file nor a server. */
export const pageScheme = 'breakledger'
export const pageHost = 'app'
export const pageAddress = `${pageScheme}://${pageHost}/`

/** True for an address of our own page. Compares scheme and host: the `origin` of such an address is the text "null", as for any file. */
export function isOwnPage(address: string): boolean {
  const url = URL.parse(address)
  return (
    url !== null &&
    url.protocol === `${pageScheme}:` &&
    url.host === pageHost &&
    url.username === '' &&
    url.password === ''
  )
}
