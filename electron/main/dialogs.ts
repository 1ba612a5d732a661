import { join } from 'node:path'
import { type BrowserWindow, dialog } from 'electron'
import type { Dialogs } from '../host/hostApi'

const siteFilter = { name: 'Sites', extensions: ['slabwright.json', 'json'] }
const importFilters = {
  picture: { name: 'Pictures', extensions: ['png', 'jpg', 'jpeg', 'pdf'] },
  table: { name: 'Tables', extensions: ['csv', 'txt'] },
  map: { name: 'Maps', extensions: ['geojson', 'json'] },
} as const

/** The system's dialogs over one window. */
export function systemDialogs(window: BrowserWindow): Dialogs {
  const open = async (folder: string, filter: { name: string; extensions: readonly string[] }) => {
    const { canceled, filePaths } = await dialog.showOpenDialog(window, {
      defaultPath: folder,
      properties: ['openFile'],
      filters: [{ name: filter.name, extensions: [...filter.extensions] }],
    })
    return canceled ? null : (filePaths[0] ?? null)
  }
  const save = async (path: string, filter: { name: string; extensions: readonly string[] }) => {
    const { canceled, filePath } = await dialog.showSaveDialog(window, {
      defaultPath: path,
      filters: [{ name: filter.name, extensions: [...filter.extensions] }],
      properties: ['showOverwriteConfirmation'],
    })
    return canceled || filePath === '' ? null : filePath
  }
  return {
    openSite: folder => open(folder, siteFilter),
    saveSite: (folder, name) => save(join(folder, name), siteFilter),
    openImport: (folder, kind) => open(folder, importFilters[kind]),
    saveExport: (folder, name, kind) => save(join(folder, name), { name: kind.toUpperCase(), extensions: [kind] }),
    print: () =>
      new Promise(resolve => window.webContents.print({ printBackground: true }, printed => resolve(printed))),
  }
}
