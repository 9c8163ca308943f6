// Plain JavaScript on purpose: it must run on a Node too old for the rest.
const [major, minor] = process.versions.node.split('.').map(Number)
if (major < 22 || (major === 22 && minor < 14)) {
  console.error(
    `Breakledger needs Node 22.14 or later and found ${process.versions.node}. ` +
      'Run "npm ci" in this folder (it brings its own Node) and start it through npm, or install a newer Node.',
  )
  process.exit(1)
}
