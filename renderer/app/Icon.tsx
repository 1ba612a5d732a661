/** Plan-view icons, 20 × 20, drawn like the thing itself; always beside their word. */
import type { ReactNode } from 'react'

const dot = (cx: number, cy: number, r: number) => <circle cx={cx} cy={cy} r={r} fill="currentColor" />

const drawings = {
  slab: (
    <>
      <path d="M3 4h9v5h5v7H3z" />
      {dot(3, 4, 1.6)}
      {dot(17, 16, 1.6)}
    </>
  ),
  ledger: <path d="M4 3h12v14H4zM7 3v14M9 7h5M9 10h5M9 13h5" />,
  undo: <path d="M4 8h8a4 4 0 0 1 0 8H8M7.5 4.5L4 8l3.5 3.5" />,
  redo: <path d="M16 8H8a4 4 0 0 0 0 8h4M12.5 4.5L16 8l-3.5 3.5" />,
  eye: (
    <>
      <path d="M2 10c3-5 13-5 16 0-3 5-13 5-16 0z" />
      {dot(10, 10, 2.2)}
    </>
  ),
  fit: <path d="M3 7V3h4M13 3h4v4M17 13v4h-4M7 17H3v-4M7 7h6v6H7z" />,
  nearer: <path d="M10 4v12M4 10h12" />,
  farther: <path d="M4 10h12" />,
  lock: <path d="M4 9h12v8H4zM7 9V6a3 3 0 0 1 6 0v3" />,
  flag: <path d="M5 17V3l9 3-9 4" />,
  sun: (
    <>
      <circle cx="10" cy="10" r="3.6" />
      <path d="M10 2v2.5M10 15.5V18M2 10h2.5M15.5 10H18M4.3 4.3l1.8 1.8M13.9 13.9l1.8 1.8M15.7 4.3l-1.8 1.8M6.1 13.9l-1.8 1.8" />
    </>
  ),
  outline: <path d="M4 4h3v3H4zM9 5.5h8M7 11h3v3H7zM12 12.5h5M5.500 7v5.500H7" />,
  table: <path d="M2 14h16M2 10h16M2 6h16M6 6v8M14 6v8" />,
} satisfies Record<string, ReactNode>

export type IconName = keyof typeof drawings

export function Icon({ name }: { readonly name: IconName }) {
  return (
    <svg className="ic" viewBox="0 0 20 20" aria-hidden="true">
      {drawings[name]}
    </svg>
  )
}
