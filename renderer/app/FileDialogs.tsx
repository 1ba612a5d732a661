import { useState } from 'react'
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import { useStore } from 'zustand'
import type { OpenDialog } from './dialogStore'
import { useSession } from './session'
import { VersionList } from './VersionList'

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
      <Modal className={open?.kind === 'versions' ? 'paper-sheet wide' : 'paper-sheet'}>
        <Dialog>{open ? <Content key={open.kind} open={open} close={close} /> : null}</Dialog>
      </Modal>
    </ModalOverlay>
  )
}

type Of<K extends OpenDialog['kind']> = Extract<OpenDialog, { kind: K }>

interface Closable {
  readonly close: () => void
}

function Content({ open, close }: { readonly open: OpenDialog } & Closable) {
  switch (open.kind) {
    case 'openFile':
      return <OpenList files={open.files} close={close} />
    case 'saveAs':
      return <NameFile open={open} close={close} />
    case 'changedOutside':
      return <ChangedOutside open={open} close={close} />
    case 'closing':
      return <Closing open={open} close={close} />
    case 'openElsewhere':
      return <OpenElsewhere open={open} close={close} />
    case 'versions':
      return <VersionList versions={open.versions} close={close} />
    case 'letGo':
      return <LetGo open={open} close={close} />
  }
}

const day = new Intl.DateTimeFormat('en-US', { day: 'numeric', month: 'short', year: 'numeric' })

function OpenList({ files, close }: { readonly files: Of<'openFile'>['files'] } & Closable) {
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
                void keeper.takeFrom(host.openFile({ fileId }))
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

function NameFile({ open, close }: { readonly open: Of<'saveAs'> } & Closable) {
  const { keeper } = useSession()
  const [name, setName] = useState(open.name)
  const replaces = open.existing && name === open.name
  return (
    <form
      onSubmit={event => {
        event.preventDefault()
        if (name.trim() === '') return
        close()
        void keeper.saveAs({ name: name.trim(), replace: replaces, next: open.next })
      }}
    >
      <Heading slot="title">{open.existing ? 'A file of that name is there already' : 'Save as'}</Heading>
      <label className="field">
        Name
        <input
          // biome-ignore lint/a11y/noAutofocus: the dialog asks for this one thing
          autoFocus
          value={name}
          maxLength={120}
          onFocus={event => event.target.select()}
          onChange={event => setName(event.target.value)}
        />
      </label>
      {replaces ? <p className="quiet under">What that file holds now is kept as a version.</p> : null}
      <div className="dialog-acts">
        <button type="button" className="btn" onClick={close}>
          Leave it
        </button>
        <button type="submit" className="btn main" disabled={name.trim() === ''}>
          {replaces ? 'Replace it' : 'Save'}
        </button>
      </div>
    </form>
  )
}

function ChangedOutside({ open: { name, next }, close }: { readonly open: Of<'changedOutside'> } & Closable) {
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
          onClick={() => {
            dialogs.setState({ open: { kind: 'saveAs', name: `${name} 2`, existing: false, next } })
          }}
        >
          Keep both
        </button>
        <button
          type="button"
          className="btn main"
          onClick={() => {
            close()
            void keeper.save({ overwrite: true, next })
          }}
        >
          Save over it
        </button>
      </div>
    </>
  )
}

/** Asked before a site is put away whose changes no file holds; nothing goes without a word. */
function Closing({ open: { name, hasFile, leaving, next }, close }: { readonly open: Of<'closing'> } & Closable) {
  const { keeper } = useSession()
  const go = (act: () => Promise<void>) => () => {
    close()
    void act()
  }
  return (
    <>
      <Heading slot="title">Keep the changes to {name}?</Heading>
      <p>
        {hasFile
          ? 'Its file does not hold them yet. Set aside, they are offered on the start page.'
          : 'No file holds this site yet. Set aside, it is offered on the start page.'}
      </p>
      <div className="dialog-acts spread">
        <button type="button" className="btn" onClick={close}>
          Leave it open
        </button>
        <button type="button" className="btn" onClick={go(() => keeper.putAway({ aside: false, leaving, next }))}>
          Throw away
        </button>
        <button type="button" className="btn" onClick={go(() => keeper.putAway({ aside: true, leaving, next }))}>
          Set aside
        </button>
        <button
          type="button"
          className="btn main"
          onClick={go(() => keeper.save({ next: () => void keeper.leave({ leaving, next }) }))}
        >
          Keep
        </button>
      </div>
    </>
  )
}

function OpenElsewhere({ open: { name }, close }: { readonly open: Of<'openElsewhere'> } & Closable) {
  const { keeper } = useSession()
  return (
    <>
      <Heading slot="title">{name} is open in another window</Heading>
      <p>Here it can be looked at. Save a copy to work on it beside the other window.</p>
      <div className="dialog-acts">
        <button type="button" className="btn" onClick={close}>
          Look at it
        </button>
        <button
          type="button"
          className="btn main"
          onClick={() => {
            close()
            void keeper.saveAs()
          }}
        >
          Save a copy
        </button>
      </div>
    </>
  )
}

function LetGo({ open: { title, drop }, close }: { readonly open: Of<'letGo'> } & Closable) {
  return (
    <>
      <Heading slot="title">Throw away the unsaved work on {title}?</Heading>
      <p>It is in no file, and cannot be brought back.</p>
      <div className="dialog-acts">
        <button type="button" className="btn main" onClick={close}>
          Leave it
        </button>
        <button
          type="button"
          className="btn"
          onClick={() => {
            close()
            drop()
          }}
        >
          Throw away
        </button>
      </div>
    </>
  )
}
