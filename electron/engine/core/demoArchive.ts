import type { Archive } from '#archive/archive.ts'
import type { SourceChoice } from '#contract/bench/source.ts'
import { Trouble } from '#contract/errors.ts'

/** Where invention has its place: an archive that the host opened for the demo and that holds nothing of a person's own. */
export type DemoArchive = {
  isOpen(): Promise<boolean>
  /** Rejects with Trouble `denied` in an archive of a person's own. */
  require(): Promise<void>
  /** Rejects with Trouble `denied` when breaks of this device have no place here: invented ones among real ones, or the reverse. */
  requireFor(source: SourceChoice): Promise<void>
}

/** Both must hold: the host says that it opened the demo, and the records say that nobody's own are among them. */
export function demoArchiveOf(archive: Pick<Archive, 'info'>, openedForDemo: boolean): DemoArchive {
  const isOpen = async () => openedForDemo && !(await archive.info()).own

  async function require(): Promise<void> {
    if (await isOpen()) return
    const { path } = await archive.info()
    throw new Trouble(
      'denied',
      `The virtual bench and the demo study would put invented records into your own archive ${path}.`,
      'Open the demo archive: on the page of the device, or with the command "breakledger serve --demo".',
    )
  }

  return {
    isOpen,
    require,
    async requireFor(source) {
      if (source.kind === 'virtual') return require()
      if (await isOpen())
        throw new Trouble(
          'denied',
          'The demo archive takes no breaks of a real device: they would lie among invented ones.',
          'Open your own archive, then connect the device.',
        )
    },
  }
}
