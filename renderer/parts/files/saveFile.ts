// Held by tests/browser/programme/duePage.spec.ts.
/** Hands a file made in the page to the browser, which saves it where its person wants it. */
export function saveFile(name: string, content: string | Uint8Array<ArrayBuffer>, mediaType: string): void {
  const address = URL.createObjectURL(new Blob([content], { type: mediaType }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  // The browser reads it after this turn
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}
