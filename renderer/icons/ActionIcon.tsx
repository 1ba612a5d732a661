/** Plan-view icons of the drawing actions, 20 × 20, drawn like the thing itself; always beside their word. */
import type { ReactNode } from 'react'
import type { ActionId } from '../editor/actions/actions'

const dot = (cx: number, cy: number, r: number) => <circle cx={cx} cy={cy} r={r} fill="currentColor" />

const drawings: Record<ActionId, ReactNode> = {
  select: <path d="M6 3v12l3-3 2 5 2-1-2-5h4z" />,
  slab: (
    <>
      <path d="M3 4h9v5h5v7H3z" />
      {dot(3, 4, 1.6)}
      {dot(17, 16, 1.6)}
    </>
  ),
  opening: (
    <>
      <path d="M3 4h14v12H3z" />
      <circle cx="10" cy="10" r="2.6" strokeDasharray="2 1.4" />
    </>
  ),
  border: (
    <path d="M3 17V4h14v13M6.500 17V7.500h7V17M3 7.500h3.500M13.500 7.500H17M10 4v3.500M3 12.500h3.500M13.500 12.500H17" />
  ),
  building: <path d="M3 5h14v10H3zM3 10h14M6.500 5v5M13.500 5v5" />,
  fence: <path d="M2 13h16M4 13V7M8 13V7M12 13V7M16 13V7" />,
  tree: (
    <>
      <circle cx="10" cy="10" r="7" strokeDasharray="3.200 1.200" />
      {dot(10, 10, 1.8)}
    </>
  ),
  cover: <path d="M3 5h14M3 15h14M3 5v2M17 5v2M3 9v2M17 9v2M3 13v2M17 13v2M6 10h8" />,
  tape: (
    <>
      <path d="M3 15C5 7 15 7 17 15" />
      {dot(3, 15, 1.8)}
      {dot(17, 15, 1.8)}
      {dot(10, 8.8, 1.8)}
    </>
  ),
  joint: <path d="M2 8h16v3H2zM5 11v5M10 11v5M15 11v5" />,
  access: <path d="M2 6h10v8H2zM12 8h4l2 3v3h-6zM5 16.500h2M13.500 16.500h2" />,
  furniture: <path d="M5 3h10v3H5zM4 6v11M16 6v11M6.500 9h7v6h-7z" />,
  note: <path d="M4 3h12v9l-4 5H4zM12 17v-5h4M7 7h6M7 10h4" />,
}

export const ActionIcon = ({ action }: { readonly action: ActionId }) => (
  <svg className="ic" viewBox="0 0 20 20" aria-hidden="true">
    {drawings[action]}
  </svg>
)
