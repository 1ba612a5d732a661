/** String.fromCharCode takes its arguments on the stack: this many are safe everywhere. */
const chunkUnits = 8192

/**
 * Decodes UTF-8 (RFC 3629), a leading byte order mark dropped. Gives `undefined` where the bytes are not UTF-8:
 * stray or missing continuation bytes, overlong forms, surrogates, code points above U+10FFFF.
 */
export const decodeUtf8 = (bytes: Uint8Array): string | undefined => {
  const start = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0
  const chunks: string[] = []
  const units = new Uint16Array(chunkUnits)
  let filled = 0
  for (let i = start; i < bytes.length; ) {
    if (filled > chunkUnits - 2) {
      chunks.push(String.fromCharCode(...units.subarray(0, filled)))
      filled = 0
    }
    const lead = bytes[i]!
    if (lead < 0x80) {
      units[filled++] = lead
      i++
      continue
    }
    const more = lead >= 0xc2 && lead < 0xe0 ? 1 : lead >= 0xe0 && lead < 0xf0 ? 2 : lead >= 0xf0 && lead < 0xf5 ? 3 : 0
    if (more === 0) return undefined
    let code = lead & (0x3f >> more)
    for (let k = 1; k <= more; k++) {
      const next = bytes[i + k]
      if (next === undefined || (next & 0xc0) !== 0x80) return undefined
      code = (code << 6) | (next & 0x3f)
    }
    const overlong = code < (more === 2 ? 0x800 : more === 3 ? 0x10000 : 0x80)
    if (overlong || (code >= 0xd800 && code < 0xe000) || code > 0x10ffff) return undefined
    if (code < 0x10000) units[filled++] = code
    else {
      units[filled++] = 0xd800 + ((code - 0x10000) >> 10)
      units[filled++] = 0xdc00 + ((code - 0x10000) & 0x3ff)
    }
    i += more + 1
  }
  chunks.push(String.fromCharCode(...units.subarray(0, filled)))
  return chunks.join('')
}
