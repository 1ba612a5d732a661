import { homedir } from 'node:os'
import { join } from 'node:path'

/** Where the program keeps recovery, versions, recent files and locks: one place for every host on a machine. */
export function dataFolder(): string {
  const home = homedir()
  if (process.platform === 'darwin') return join(home, 'Library', 'Application Support', 'Slabwright', 'sites')
  if (process.platform === 'win32')
    return join(process.env.APPDATA ?? join(home, 'AppData', 'Roaming'), 'Slabwright', 'sites')
  return join(process.env.XDG_CONFIG_HOME ?? join(home, '.config'), 'Slabwright', 'sites')
}

/** Where the user's sites are looked for and saved unless another folder is named. */
export function workingFolder(): string {
  return join(homedir(), 'Documents', 'Slabwright')
}
