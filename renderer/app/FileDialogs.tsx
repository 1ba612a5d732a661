import { useState } from 'react'
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import { useStore } from 'zustand'
import type { OpenDialog } from './dialogStore'
import { useSession } from './session'

/** Paper sheets on the dimmed table; Esc is always the safe way out. */
export function FileDialogs() {
  const { dialogs } = useSession()
  const open = useStore(dialogs, state => state.open)
  const close = () => dialogs.setState({ open: null })
  return (
    <ModalOverlay
      className="dimmed"
      isOpen={open !== null}
      onOpenChange={isOpen => (isOpen ? undefined : close())}
      isDismissable
    >
      <Modal className="paper-sheet">
        <Dialog>{open ? <Content key={open.kind} open={open} close={close} /> : null}</Dialog>
      </Modal>
    </ModalOverlay>
  )
}

function Content({ open, close }: { readonly open: OpenDialog; readonly close: () => void }) {
  switch (open.kind) {
    case 'openFile':
      return <OpenList files={open.files} close={close} />
    case 'saveAs':
      return <NameFile name={open.name} existing={open.existing} close={close} />
    case 'changedOutside':
      return <ChangedOutside name={open.name} close={close} />
  }
}

const day = new Intl.DateTimeFormat('en-US', { day: 'numeric', month: 'short', year: 'numeric' })

function OpenList({
  files,
  close,
}: {
  readonly files: Extract<OpenDialog, { kind: 'openFile' }>['files']
  readonly close: () => void
}) {
  const { host, keeper, start } = useSession()
  return (
    <>
      <Heading slot="title">Open a file</Heading>
      <p className="quiet">In {start.folder}</p>
      {files.length === 0 ? <p>No sites are kept there yet.</p> : null}
      <ul className="lately">
        {files.map(({ fileId, name, changedAt }) => (
          <li key={fileId}>
            <button
              type="button"
              onClick={() => {
                close()
                void host.openFile({ fileId }).then(keeper.take)
              }}
            >
              <span>{name}</span>
              <span>{day.format(new Date(changedAt))}</span>
            </button>
          </li>
        ))}
      </ul>
      <div className="dialog-acts">
        <button type="button" className="btn" onClick={close}>
          Leave it
        </button>
      </div>
    </>
  )
}

function NameFile({
  name: first,
  existing,
  close,
}: {
  readonly name: string
  readonly existing: boolean
  readonly close: () => void
}) {
  const { keeper } = useSession()
  const [name, setName] = useState(first)
  const replaces = existing && name === first
  return (
    <form
      onSubmit={event => {
        event.preventDefault()
        if (name.trim() === '') return
        close()
        void keeper.saveAs(name.trim(), replaces)
      }}
    >
      <Heading slot="title">{existing ? 'A file of that name is there already' : 'Save as'}</Heading>
      <label className="field">
        Name
        {/* biome-ignore lint/a11y/noAutofocus: the dialog asks for this one thing */}
        <input autoFocus value={name} maxLength={120} onChange={event => setName(event.target.value)} />
      </label>
      <div className="dialog-acts">
        <button type="button" className="btn" onClick={close}>
          Leave it
        </button>
        <button type="submit" className="btn main">
          {replaces ? 'Replace it' : 'Save'}
        </button>
      </div>
    </form>
  )
}

function ChangedOutside({ name, close }: { readonly name: string; readonly close: () => void }) {
  const { keeper, dialogs } = useSession()
  return (
    <>
      <Heading slot="title">{name} was changed by another program</Heading>
      <p>What it holds now is kept as a version if you save over it.</p>
      <div className="dialog-acts">
        <button type="button" className="btn" onClick={close}>
          Leave it
        </button>
        <button
          type="button"
          className="btn"
          onClick={() => dialogs.setState({ open: { kind: 'saveAs', name, existing: false } })}
        >
          Keep both
        </button>
        <button
          type="button"
          className="btn main"
          onClick={() => {
            close()
            void keeper.save(true)
          }}
        >
          Save over it
        </button>
      </div>
    </>
  )
}
