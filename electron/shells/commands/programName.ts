import packageFile from '../../../package.json' with { type: 'json' }

/** The program's name and version, as records keep it. */
export const programName = `Breakledger ${packageFile.version}`
