import { useState } from 'react'
import { useStore } from 'zustand'
import { fileWords, savedWithWords, troubleWords } from './fileWords'
import { useSession } from './session'

/** What the user must know about the file that the short line cannot tell, with what can be done. */
export function FileNotice() {
  const { keeper } = useSession()
  const { trouble, saved, readOnly, fileName } = useStore(keeper)
  const [seen, setSeen] = useState<object | null>(null)
  const half = saved === null ? null : savedWithWords(saved)
  const isAboutReading = trouble === null && half === null
  const words =
    trouble !== null
      ? troubleWords(trouble)
      : (half ?? (readOnly === null ? null : fileWords({ reason: readOnly, ...(fileName ? { name: fileName } : {}) })))
  const token = trouble ?? (half === null ? null : saved)
  if (words === null || (token !== null && token === seen)) return null
  return (
    <div className={`file-notice ${trouble ? 'stop' : 'check'}`} role={trouble ? 'alert' : 'status'}>
      <p>{words}</p>
      {trouble?.failure.reason === 'hostGone' ? null : (
        <div className="notice-acts">
          {isAboutReading ? null : (
            <button
              type="button"
              className="btn"
              onClick={() => void keeper.save({ overwrite: trouble?.failure.reason === 'vanished' })}
            >
              Save again
            </button>
          )}
          <button type="button" className="btn" onClick={() => void keeper.saveAs()}>
            {isAboutReading ? 'Save a copy' : 'Save as'}
          </button>
          {isAboutReading ? null : (
            <button type="button" className="btn" onClick={() => setSeen(token)}>
              Hide this
            </button>
          )}
        </div>
      )}
    </div>
  )
}
