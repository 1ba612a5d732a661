import { codeOf } from './fileLayer'

/** Whether a process of this machine is alive. */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return codeOf(error) === 'EPERM'
  }
}
