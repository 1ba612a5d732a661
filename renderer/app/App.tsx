import { useEffect, useLayoutEffect, useState } from 'react'
import { useSlabKey } from '../atSlab/EnterSlab'
import { FileNotice } from './FileNotice'
import { StartPage } from './StartPage'
import { useSite, useView } from './session'

// The start page stands before the rest of the page is read, which begins as soon as it does.
const loadFrame = async () => (await import('./Frame')).Frame
const loadDialogs = async () => (await import('./FileDialogs')).FileDialogs
const loadAtSlab = async () => (await import('../atSlab/AtSlab')).AtSlab

/** Null until it has been read. */
function useLoaded<T>(load: () => Promise<T>): T | null {
  const [loaded, setLoaded] = useState<T | null>(null)
  useEffect(() => {
    void load().then(part => setLoaded(() => part))
  }, [load])
  return loaded
}

export function App() {
  const Frame = useLoaded(loadFrame)
  const FileDialogs = useLoaded(loadDialogs)
  const AtSlab = useLoaded(loadAtSlab)
  const isOpen = useSite(({ history }) => history !== null)
  const { theme, atSlab } = useView(({ theme, slabTheme, atSlab }) => ({
    theme: atSlab === null ? theme : slabTheme,
    atSlab,
  }))
  useSlabKey()
  // Before the plan is painted: its inks are those of the theme.
  useLayoutEffect(() => {
    document.documentElement.dataset.theme = theme
  }, [theme])
  return (
    <>
      {isOpen ? null : <StartPage />}
      {isOpen && atSlab === null && Frame ? <Frame /> : null}
      {isOpen && atSlab !== null && AtSlab ? <AtSlab pourId={atSlab} /> : null}
      {isOpen ? <FileNotice /> : null}
      {FileDialogs ? <FileDialogs /> : null}
    </>
  )
}
