import { homedir } from 'node:os'
import { archiveFile, keptHeadsFile, openedArchivesFile } from '../archiveFile.ts'
import type { CommandValues } from './command.ts'
import { textOption } from './optionValues.ts'

/** The archive that a command works on: the one that --archive names, else the one in the user's data folder. */
export function archiveOf(values: CommandValues, kind: 'own' | 'demo' = 'own'): string {
  return textOption(values, 'archive') ?? archiveFile(kind, surroundings())
}

/** The file that heads of chains are kept in. */
export function headsFile(): string {
  return keptHeadsFile(surroundings())
}

/** Where archives lie that were never named, and where it is remembered which were opened. */
export function knownPlaces(): { places: { own: string; demo: string }; openedFile: string } {
  const places = { own: archiveFile('own', surroundings()), demo: archiveFile('demo', surroundings()) }
  return { places, openedFile: openedArchivesFile(surroundings()) }
}

const surroundings = () => ({ platform: process.platform, home: homedir(), environment: process.env })
