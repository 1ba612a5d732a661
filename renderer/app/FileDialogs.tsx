import { useEffect, useState } from 'react'
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import { useStore } from 'zustand'
import { focusPlan } from '../editor/focusPlan'
import type { Held, OpenDialog } from './dialogStore'
import { fileWords } from './fileWords'
import { useSession } from './session'
import { VersionList } from './VersionList'

/** By then what had the focus before the dialog has it again, where it still stands. */
const givenBackMs = 60

/** Where a dialog gave the focus back to nothing, as after the page around it changed, the plan has it. */
function useFocusOnceClosed(isClosed: boolean): void {
  useEffect(() => {
    if (!isClosed) return
    const timer = setTimeout(() => {
      if (document.activeElement === document.body) focusPlan()
    }, givenBackMs)
    return () => clearTimeout(timer)
  }, [isClosed])
}

/** Paper sheets on the dimmed table; Esc is always the safe way out. */
export function FileDialogs() {
  const { dialogs } = useSession()
  const open = useStore(dialogs, state => state.open)
  const close = () => dialogs.setState({ open: null })
  useFocusOnceClosed(open === null)
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
      return <VersionList versions={open.versions} failure={open.failure} close={close} />
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
  const isRefused = name === open.name
  const replaces = open.refused === 'exists' && isRefused
  return (
    <form
      onSubmit={event => {
        event.preventDefault()
        if (name.trim() === '') return
        close()
        void keeper.saveAs({ name: name.trim(), replace: replaces, next: open.next })
      }}
    >
      <Heading slot="title">{open.refused === 'exists' ? 'A file of that name is there already' : 'Save as'}</Heading>
      <label className="field">
        Name
        <input
          // biome-ignore lint/a11y/noAutofocus: the dialog asks for this one thing
          autoFocus
          value={name}
          maxLength={120}
          aria-invalid={(open.refused === 'nameRefused' && isRefused) || undefined}
          aria-describedby={open.refused === null ? undefined : 'name-refused'}
          onFocus={event => event.target.select()}
          onChange={event => setName(event.target.value)}
        />
      </label>
      <p id="name-refused" className="quiet under" role="status">
        {replaces ? 'What that file holds now is kept as a version.' : null}
        {open.refused === 'nameRefused' && isRefused ? fileWords({ reason: 'nameRefused' }) : null}
      </p>
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
            dialogs.setState({ open: { kind: 'saveAs', name: `${name} 2`, refused: null, next } })
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

const heldWords: Readonly<Record<Held, string>> = {
  file: 'Its file does not hold them yet. Set aside, they are offered on the start page.',
  none: 'No file holds this site yet. Set aside, it is offered on the start page.',
  copy: 'Its file can only be looked at here: Keep asks for the name of a copy. Set aside, the changes are offered on the start page.',
  gone: 'The program behind this page has ended, and nothing can be kept or opened here any more. Start it again: what was kept is offered there.',
}

/** Asked before a site is put away whose changes no file holds; nothing goes without a word. */
function Closing({ open: { name, held, leaving, next }, close }: { readonly open: Of<'closing'> } & Closable) {
  const { keeper } = useSession()
  const go = (act: () => Promise<void>) => () => {
    close()
    void act()
  }
  if (held === 'gone')
    return (
      <>
        <Heading slot="title">{name} cannot be put away</Heading>
        <p>{heldWords[held]}</p>
        <div className="dialog-acts">
          <button type="button" className="btn main" onClick={close}>
            Leave it open
          </button>
        </div>
      </>
    )
  return (
    <>
      <Heading slot="title">Keep the changes to {name}?</Heading>
      <p>{heldWords[held]}</p>
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
