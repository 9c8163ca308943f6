import { buildIfNeeded } from './build.ts'

// npm run breakledger: the command line from source, over threads that are up to date.
await buildIfNeeded('threads')
await import('../commands/main.ts')
