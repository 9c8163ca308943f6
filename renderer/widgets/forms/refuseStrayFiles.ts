// Held by tests/browser/breaks/woodFromPicture.spec.ts.
/** Keeps a file that is dropped beside the parts that take files from being opened in place of the page. */
export function refuseStrayFiles(): void {
  for (const name of ['dragover', 'drop'] as const)
    addEventListener(name, (event) => {
      if (event.defaultPrevented || !event.dataTransfer?.types.includes('Files')) return
      event.preventDefault()
      event.dataTransfer.dropEffect = 'none'
    })
}
