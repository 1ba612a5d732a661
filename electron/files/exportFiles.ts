/** Sheets and tables written beside the sites. */
import { basename, dirname, join } from 'node:path'
import type { HostAnswer } from '../../shared/host'
import { ok } from '../../shared/problem'
import { failed, reasonOf } from './fileFault'
import type { FileLayer } from './fileLayer'
import { exportFileName } from './fileNames'
import type { FileRoom } from './fileRoom'
import { replaceFile } from './replaceFile'
import type { WindowFiles } from './windowFiles'

export function exportFiles({ layer, pause, home, atPath }: FileRoom): Pick<WindowFiles, 'exportNamed' | 'exportPath'> {
  const exportBytes = async (path: string, bytes: Uint8Array): Promise<HostAnswer<{ fileName: string }>> => {
    try {
      await layer.makeFolder(dirname(path))
    } catch (error) {
      return failed(reasonOf(error), path)
    }
    const report = await replaceFile(layer, path, bytes, { pause })
    if (!report.replaced) return failed(report.reason, path)
    return ok({ fileName: basename(path) })
  }

  return {
    async exportNamed({ name, kind, base64 }) {
      const plain = exportFileName(name, kind)
      if (plain === null) return failed('nameRefused')
      const folder = await home()
      return atPath(folder, async () => {
        try {
          const path = await freeName(layer, join(folder, plain), kind)
          return await exportBytes(path, Buffer.from(base64, 'base64'))
        } catch (error) {
          return failed(reasonOf(error))
        }
      })
    },
    exportPath: exportBytes,
  }
}

/** `plan.pdf`, else `plan 2.pdf` and so on: an export replaces nothing by itself. */
async function freeName(layer: FileLayer, path: string, kind: string): Promise<string> {
  const stem = path.slice(0, -(kind.length + 1))
  for (let number = 1; ; number += 1) {
    const candidate = number === 1 ? path : `${stem} ${number}.${kind}`
    if ((await layer.facts(candidate)) === null) return candidate
  }
}
