import { useLayoutEffect } from 'react'
import { AtSlab } from '../atSlab/AtSlab'
import { useSlabKey } from '../atSlab/EnterSlab'
import { FileDialogs } from './FileDialogs'
import { FileNotice } from './FileNotice'
import { Frame } from './Frame'
import { StartPage } from './StartPage'
import { useSite, useView } from './session'

export function App() {
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
      {isOpen ? atSlab === null ? <Frame /> : <AtSlab pourId={atSlab} /> : <StartPage />}
      {isOpen ? <FileNotice /> : null}
      <FileDialogs />
    </>
  )
}
