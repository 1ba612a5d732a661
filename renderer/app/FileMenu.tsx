import { memo, useMemo } from 'react'
import { Button, Menu, MenuItem, MenuTrigger, Popover, Separator } from 'react-aria-components'
import { type FileAct, fileActs } from './fileActs'
import { useSession } from './session'

const entries: readonly (readonly [FileAct, string] | null)[] = [
  ['save', 'Save'],
  ['saveAs', 'Save as'],
  ['versions', 'Kept versions'],
  null,
  ['export', 'Export'],
  ['print', 'Print'],
  null,
  ['new', 'New site'],
  ['open', 'Open a file'],
  ['startPage', 'Start page'],
]

/** The acts on the file, for hosts without a menu of their own and for hands already on the page. */
export const FileMenu = memo(function FileMenu() {
  const session = useSession()
  const acts = useMemo(() => fileActs(session), [session])
  return (
    <MenuTrigger>
      <Button className="btn bare file-button">File</Button>
      <Popover className="menu-sheet" placement="bottom start">
        <Menu aria-label="File" onAction={key => acts[key as FileAct]()}>
          {entries.map((entry, at) =>
            entry === null ? (
              // biome-ignore lint/suspicious/noArrayIndexKey: the list never changes
              <Separator key={at} />
            ) : (
              <MenuItem key={entry[0]} id={entry[0]}>
                {entry[1]}
              </MenuItem>
            ),
          )}
        </Menu>
      </Popover>
    </MenuTrigger>
  )
})
