const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'

/** The first bytes of a base64 text (RFC 4648 §4); stops at the first foreign character. */
const firstBytes = (base64: string, most: number): readonly number[] => {
  const bytes: number[] = []
  let held = 0
  let bits = 0
  for (let i = 0; i < base64.length && bytes.length < most; i++) {
    const value = alphabet.indexOf(base64.charAt(i))
    if (value < 0) break
    held = ((held << 6) | value) & 0xffff
    bits += 6
    if (bits >= 8) {
      bits -= 8
      bytes.push((held >> bits) & 0xff)
    }
  }
  return bytes
}

/** Markers of a JPEG that open a frame and carry its size: SOF0 … SOF15 without DHT, JPG and DAC. */
const opensFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc

/** A JPEG's size may stand behind a thumbnail and a color profile; this far we look for it. */
const headerBytes = 512 * 1024

/**
 * Width and height in pixels of a base64 PNG (W3C PNG, third edition, §11.2.1 IHDR) or JPEG (ITU-T T.81 §B.2.2), read
 * from its header; `undefined` where the text is neither.
 */
export const pictureSize = (base64: string): { readonly width: number; readonly height: number } | undefined => {
  const head = firstBytes(base64, 24)
  const at = (bytes: readonly number[], i: number) => bytes[i] ?? 0
  if (head.length === 24 && head[0] === 0x89 && head[1] === 0x50 && head[2] === 0x4e && head[3] === 0x47) {
    const four = (i: number) =>
      at(head, i) * 0x1000000 + at(head, i + 1) * 0x10000 + at(head, i + 2) * 0x100 + at(head, i + 3)
    return { width: four(16), height: four(20) }
  }
  if (head[0] !== 0xff || head[1] !== 0xd8) return undefined
  const bytes = firstBytes(base64, headerBytes)
  const two = (i: number) => at(bytes, i) * 0x100 + at(bytes, i + 1)
  for (let i = 2; i + 8 < bytes.length && bytes[i] === 0xff; ) {
    const marker = at(bytes, i + 1)
    if (opensFrame(marker)) return { width: two(i + 7), height: two(i + 5) }
    i += marker === 0xff ? 1 : 2 + two(i + 2)
  }
  return undefined
}
