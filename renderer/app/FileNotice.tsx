import { useLayoutEffect, useRef, useState } from 'react'
import { useStore } from 'zustand'
import { focusPlan } from '../editor/focusPlan'
import { fileWords, savedWithWords, troubleWords } from './fileWords'
import { useSession } from './session'

/** What the user must know about the file that the short line cannot tell, with what can be done. */
export function FileNotice() {
  const { keeper } = useSession()
  const { trouble, saved, readOnly, fileName, docId } = useStore(keeper)
  const [seen, setSeen] = useState<object | string | null>(null)
  const half = saved === null ? null : savedWithWords(saved)
  const told = trouble ?? (half === null ? null : saved)
  if (told === null) {
    if (readOnly === null || seen === docId) return null
    const words = fileWords({ reason: readOnly, ...(fileName ? { name: fileName } : {}) })
    return <Notice words={words} isTrouble={false} hide={() => setSeen(docId)} />
  }
  if (told === seen) return null
  const again = () => void keeper.save({ overwrite: trouble?.failure.reason === 'vanished' })
  return (
    <Notice
      words={trouble === null ? (half ?? '') : troubleWords(trouble)}
      isTrouble={trouble !== null}
      {...(trouble?.failure.reason === 'hostGone' ? {} : { again, hide: () => setSeen(told) })}
    />
  )
}

interface NoticeProps {
  readonly words: string
  readonly isTrouble: boolean
  readonly again?: () => void
  /** Without it nothing can be done. */
  readonly hide?: () => void
}

function Notice({ words, isTrouble, again, hide }: NoticeProps) {
  const { keeper } = useSession()
  const box = useRef<HTMLDivElement>(null)
  // Before the box is gone, and the focus with it.
  useLayoutEffect(() => {
    const shown = box.current
    return () => {
      if (shown?.contains(document.activeElement)) focusPlan()
    }
  }, [])
  return (
    <div ref={box} className={`file-notice ${isTrouble ? 'stop' : 'check'}`} role={isTrouble ? 'alert' : 'status'}>
      <p>{words}</p>
      {hide === undefined ? null : (
        <div className="notice-acts">
          {again === undefined ? null : (
            <button type="button" className="btn" onClick={again}>
              Save again
            </button>
          )}
          <button type="button" className="btn" onClick={() => void keeper.saveAs()}>
            {again === undefined ? 'Save a copy' : 'Save as'}
          </button>
          <button type="button" className="btn" onClick={hide}>
            Hide this
          </button>
        </div>
      )}
    </div>
  )
}
