import { type FileLayer, nodeFiles } from '../../../electron/files/fileLayer'

type Operation = 'create' | 'rename' | 'syncFolder'

export interface SwitchableFiles {
  readonly layer: FileLayer
  /** From now on the operation fails with this code wherever `where` is part of the path; null: it works again. */
  fail(operation: Operation, code: string | null, where?: string): void
  /** From now on nothing is told about a file any more, as on a drive that stopped answering. */
  goDeaf(isDeaf: boolean): void
}

/** The real disk with operations that can be made to fail. */
export function switchableFiles(): SwitchableFiles {
  const failing = new Map<Operation, { code: string; where: string }>()
  let deaf = false
  const check = (operation: Operation, path: string) => {
    const fault = failing.get(operation)
    if (fault !== undefined && path.includes(fault.where)) {
      throw Object.assign(new Error(`${fault.code}: injected into ${operation}`), { code: fault.code })
    }
  }
  return {
    layer: {
      ...nodeFiles,
      async create(path, mode) {
        check('create', path)
        return nodeFiles.create(path, mode)
      },
      async rename(from, to) {
        try {
          check('rename', to)
        } catch (error) {
          deaf = true
          throw error
        }
        return nodeFiles.rename(from, to)
      },
      async syncFolder(path) {
        check('syncFolder', path)
        return nodeFiles.syncFolder(path)
      },
      async facts(path) {
        if (deaf) throw Object.assign(new Error('EIO: injected into facts'), { code: 'EIO' })
        return nodeFiles.facts(path)
      },
    },
    fail(operation, code, where = '') {
      if (code === null) failing.delete(operation)
      else failing.set(operation, { code, where })
    },
    goDeaf(isDeaf) {
      deaf = isDeaf
    },
  }
}
