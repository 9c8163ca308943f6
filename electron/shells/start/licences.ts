import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import withoutText from './licencesWithoutText.json' with { type: 'json' }

type Locked = { dev?: boolean; devOptional?: boolean; license?: string; version?: string }

/** Only there to run the project's own scripts; never packed. */
const ownNode = /node_modules\/node-(bin-|(darwin|linux|win)-)/

/**
 * The licence text of the program and of every package that is bundled or packed, as one text. Throws when a package has none
 * and licencesWithoutText.json gives no reason.
 */
export function licenceTexts(folder: string, reasons: Readonly<Record<string, string>> = withoutText): string {
  const lock = JSON.parse(readFileSync(join(folder, 'package-lock.json'), 'utf8')) as {
    packages: Record<string, Locked>
  }
  const own = `Breakledger\n\n${readFileSync(join(folder, 'LICENSE'), 'utf8').trim()}\n`
  const parts = Object.entries(lock.packages)
    .filter(([path, { dev, devOptional }]) => path !== '' && !dev && !devOptional && !ownNode.test(path))
    // Native parts for other systems are not installed, and not packed.
    .filter(([path]) => existsSync(join(folder, path)))
    .map(([path, { version, license }]) => {
      const name = path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length)
      const files = readdirSync(join(folder, path)).filter((file) => /^(licen[cs]e|copying|notice)/i.test(file))
      const texts = files.map((file) => readFileSync(join(folder, path, file), 'utf8').trim())
      const reason = reasons[name]
      if (texts.length === 0 && reason === undefined)
        throw new Error(`${name} has no licence text: give the reason in licencesWithoutText.json`)
      return `${name} ${version ?? ''} (${license ?? 'no licence named'})\n\n${[...texts, ...(texts.length === 0 ? [reason] : [])].join('\n\n')}\n`
    })
  return [own, ...parts].join(`\n${'-'.repeat(80)}\n\n`)
}
