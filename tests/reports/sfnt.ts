/** WOFF 1.0 to plain OpenType, so that the rasterizer of the tests can read the packaged fonts (W3C WOFF 1.0, §4, §5). */
import { inflateSync } from 'node:zlib'

export function sfntOfWoff(woff: Buffer): Buffer {
  const count = woff.readUInt16BE(12)
  const entries = Array.from({ length: count }, (_, i) => {
    const at = 44 + i * 20
    const [offset, compressed, length] = [
      woff.readUInt32BE(at + 4),
      woff.readUInt32BE(at + 8),
      woff.readUInt32BE(at + 12),
    ]
    const body = woff.subarray(offset, offset + compressed)
    return {
      tag: woff.subarray(at, at + 4),
      checksum: woff.readUInt32BE(at + 16),
      data: compressed < length ? inflateSync(body) : body,
    }
  })
  const head = Buffer.alloc(12 + 16 * count)
  woff.copy(head, 0, 4, 8)
  head.writeUInt16BE(count, 4)
  const power = 2 ** Math.floor(Math.log2(count))
  head.writeUInt16BE(power * 16, 6)
  head.writeUInt16BE(Math.log2(power), 8)
  head.writeUInt16BE((count - power) * 16, 10)
  const parts = [head]
  let offset = head.length
  for (const [i, entry] of entries.entries()) {
    const at = 12 + i * 16
    entry.tag.copy(head, at)
    head.writeUInt32BE(entry.checksum, at + 4)
    head.writeUInt32BE(offset, at + 8)
    head.writeUInt32BE(entry.data.length, at + 12)
    const padded = Buffer.alloc(Math.ceil(entry.data.length / 4) * 4)
    entry.data.copy(padded)
    parts.push(padded)
    offset += padded.length
  }
  return Buffer.concat(parts)
}
