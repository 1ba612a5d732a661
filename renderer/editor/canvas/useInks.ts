import { useEffect, useState } from 'react'
import { useView } from '../../app/session'
import { type Inks, readInks } from '../../theme/inks'

/** The theme's inks, read again when the theme changes and when the letters have come. */
export function useInks(): Inks | null {
  const theme = useView(state => state.theme)
  const [inks, setInks] = useState<Inks | null>(null)
  useEffect(() => {
    let isGone = false
    const read = () => {
      if (!isGone) setInks(readInks(document.documentElement))
    }
    document.documentElement.dataset.theme = theme
    read()
    const faces = [
      '600 14px "Barlow Semi Condensed"',
      '500 14px "Barlow Semi Condensed"',
      '700 14px "Barlow Semi Condensed"',
      '700 34px "Zilla Slab Lining"',
    ]
    void Promise.all(faces.map(face => document.fonts.load(face))).then(read)
    return () => {
      isGone = true
    }
  }, [theme])
  return inks
}
