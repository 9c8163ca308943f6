import { readFile, stat } from 'node:fs/promises'
import { Trouble } from '#contract/errors.ts'

/** Name of the group that owns a device file; null where that cannot be found out. */
export async function groupOf(path: string, groupFile = '/etc/group'): Promise<string | null> {
  try {
    const { gid } = await stat(path)
    const groups = (await readFile(groupFile, 'utf8')).split('\n').map((line) => line.split(':'))
    return groups.find((fields) => Number(fields[2]) === gid)?.[0] ?? null
  } catch {
    // Systems without that file have no such group to name.
    return null
  }
}

/**
 * What the port library said on opening, as one sentence and one thing to do. `group` owns the device file (Linux);
 * without one the usual name is given.
 */
export function openTrouble(path: string, reason: string, group: string | null, platform: string): Trouble {
  const says = (pattern: RegExp) => pattern.test(reason)
  if (
    says(/cannot lock port|resource busy|resource temporarily unavailable/i) ||
    (platform === 'win32' && says(/access denied/i))
  )
    return new Trouble(
      'port-busy',
      `The port ${path} is in use by another program.`,
      'Close the other program (a serial monitor, a second window of this one) and connect again.',
    )
  if (says(/permission denied|access denied|operation not permitted/i)) {
    const name = group ?? 'dialout'
    return new Trouble(
      'port-permission',
      platform === 'linux'
        ? `You may not open the port ${path}: it belongs to the group "${name}".`
        : `You may not open the port ${path}.`,
      platform === 'linux' && name !== 'root'
        ? `Join the group with: sudo usermod -aG ${name} "$USER"  Then log out and in again.`
        : 'Ask whoever looks after this computer for the right to use the port.',
    )
  }
  if (says(/no such file|file not found|no such device|cannot find|unknown error code 2\b/i))
    return new Trouble(
      'port-missing',
      `There is no port ${path}.`,
      'Plug the amplifier in, or choose another port from the list.',
    )
  if (says(/inappropriate ioctl|not a typewriter|not a tty/i))
    return new Trouble('port-missing', `${path} is not a serial port.`, 'Choose another port from the list.')
  return new Trouble(
    'not-connected',
    `The port ${path} cannot be opened: ${reason}.`,
    'Unplug the amplifier, plug it in again and connect again.',
  )
}
