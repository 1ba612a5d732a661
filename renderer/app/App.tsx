import { useEffect } from 'react'
import { FileDialogs } from './FileDialogs'
import { FileNotice } from './FileNotice'
import { Frame } from './Frame'
import { StartPage } from './StartPage'
import { useSite, useView } from './session'

export function App() {
  const isOpen = useSite(({ history }) => history !== null)
  const theme = useView(state => state.theme)
  useEffect(() => {
    document.documentElement.dataset.theme = theme
  }, [theme])
  return (
    <>
      {isOpen ? <Frame /> : <StartPage />}
      {isOpen ? <FileNotice /> : null}
      <FileDialogs />
    </>
  )
}
