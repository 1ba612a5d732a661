import { Menu, type MenuItemConstructorOptions } from 'electron'
import type * as z from 'zod/mini'
import type { HostEvent } from '../../shared/host'

type MenuEntry = Extract<z.infer<typeof HostEvent>, { kind: 'menu' }>['entry']

/** The menu of the program; entries of our own are passed on to the page in front. */
export function setMenu(choose: (entry: MenuEntry) => void, openWindow: () => void): void {
  const ours = (label: string, entry: MenuEntry, accelerator?: string): MenuItemConstructorOptions => ({
    label,
    click: () => choose(entry),
    ...(accelerator === undefined ? {} : { accelerator }),
    // Keys reach the page first: while a length is typed, undo belongs to the field.
    registerAccelerator: false,
  })
  const isMac = process.platform === 'darwin'
  Menu.setApplicationMenu(
    Menu.buildFromTemplate([
      ...(isMac ? [{ role: 'appMenu' as const }] : []),
      {
        label: 'File',
        submenu: [
          ours('New site', 'new', 'CmdOrCtrl+N'),
          { label: 'New window', accelerator: 'CmdOrCtrl+Shift+N', click: openWindow },
          ours('Open', 'open', 'CmdOrCtrl+O'),
          { type: 'separator' },
          ours('Save', 'save', 'CmdOrCtrl+S'),
          ours('Save as', 'saveAs', 'CmdOrCtrl+Shift+S'),
          ours('Kept versions', 'versions'),
          { type: 'separator' },
          ours('Export', 'export'),
          ours('Print', 'print', 'CmdOrCtrl+P'),
          { type: 'separator' },
          { role: isMac ? 'close' : 'quit' },
        ],
      },
      {
        label: 'Edit',
        submenu: [
          ours('Undo', 'undo', 'CmdOrCtrl+Z'),
          ours('Redo', 'redo', isMac ? 'Cmd+Shift+Z' : 'Ctrl+Y'),
          { type: 'separator' },
          { role: 'cut' },
          { role: 'copy' },
          { role: 'paste' },
          { role: 'selectAll' },
        ],
      },
      {
        label: 'View',
        submenu: [
          { role: 'zoomIn' },
          { role: 'zoomOut' },
          { role: 'resetZoom' },
          { type: 'separator' },
          { role: 'togglefullscreen' },
        ],
      },
      { role: 'windowMenu' },
    ]),
  )
}
