/** `northDeg` = clockwise angle from drawing-up to true north. */
export function NorthMark({ northDeg }: { readonly northDeg: number }) {
  return (
    <svg
      className="north"
      viewBox="-32 -32 64 64"
      role="img"
      aria-label={`True north is ${Math.round(northDeg)}° clockwise from the top of the plan`}
    >
      <circle r="21" />
      <g transform={`rotate(${northDeg})`}>
        <path d="M0-16L6 12 0 7-6 12z" />
        <text y="-24" textAnchor="middle" dominantBaseline="central" transform={`rotate(${-northDeg} 0 -26)`}>
          N
        </text>
      </g>
    </svg>
  )
}
