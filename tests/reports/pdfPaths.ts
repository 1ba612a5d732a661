/** Reads the painted paths of all pages, form objects included, out of an uncompressed PDF: their sizes in points. */
export interface PagePath {
  readonly width: number
  readonly height: number
}

type Matrix = readonly [number, number, number, number, number, number]

const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[1] * n[2],
  m[0] * n[1] + m[1] * n[3],
  m[2] * n[0] + m[3] * n[2],
  m[2] * n[1] + m[3] * n[3],
  m[4] * n[0] + m[5] * n[2] + n[4],
  m[4] * n[1] + m[5] * n[3] + n[5],
]

const contentStreams = (bytes: Uint8Array): string[] =>
  [
    ...Buffer.from(bytes)
      .toString('latin1')
      .matchAll(/(?<!end)stream\r?\n([\s\S]*?)endstream/g),
  ]
    .map(m => m[1]!)
    .filter(s => /\n-?[\d.]+ -?[\d.]+ m\n/.test(s))

export const pdfPaths = (bytes: Uint8Array): PagePath[] => contentStreams(bytes).flatMap(streamPaths)

function streamPaths(stream: string): PagePath[] {
  const saved: Matrix[] = []
  let matrix: Matrix = [1, 0, 0, 1, 0, 0]
  let points: [number, number][] = []
  const paths: PagePath[] = []
  const operands: number[] = []
  const add = (x: number, y: number): void => {
    points.push([x * matrix[0] + y * matrix[2] + matrix[4], x * matrix[1] + y * matrix[3] + matrix[5]])
  }
  for (const token of stream.split(/\s+/)) {
    const value = Number(token)
    if (token !== '' && Number.isFinite(value)) {
      operands.push(value)
      continue
    }
    const o = operands.splice(0)
    if (token === 'q') saved.push(matrix)
    else if (token === 'Q') matrix = saved.pop() ?? matrix
    else if (token === 'cm') matrix = times(o.slice(-6) as unknown as Matrix, matrix)
    else if (token === 'm' || token === 'l') add(o.at(-2)!, o.at(-1)!)
    else if (token === 'c') add(o.at(-2)!, o.at(-1)!)
    else if (/^[fFBSbs]\*?$/.test(token) || token === 'n') {
      if (points.length > 1 && token !== 'n') {
        const [xs, ys] = [points.map(p => p[0]), points.map(p => p[1])]
        paths.push({ width: Math.max(...xs) - Math.min(...xs), height: Math.max(...ys) - Math.min(...ys) })
      }
      points = []
    }
  }
  return paths
}
