import { spawn } from 'node:child_process'

/** Whether a window could be seen by anyone. */
export function hasDisplay(): boolean {
  if (process.platform === 'darwin' || process.platform === 'win32') return true
  return (process.env.DISPLAY ?? '') !== '' || (process.env.WAYLAND_DISPLAY ?? '') !== ''
}

/** Asks the system to show an address; false when there is nothing to show it with. */
export function openBrowser(address: string): Promise<boolean> {
  if (!hasDisplay()) return Promise.resolve(false)
  const [program, ...before] =
    process.platform === 'darwin'
      ? ['open']
      : process.platform === 'win32'
        ? ['rundll32', 'url.dll,FileProtocolHandler']
        : ['xdg-open']
  return new Promise(resolve => {
    const child = spawn(program, [...before, address], { stdio: 'ignore', detached: true })
    child.on('error', () => resolve(false))
    child.on('exit', code => resolve(code === 0))
    child.unref()
  })
}
