const mark = [0x45, 0x78, 0x69, 0x66, 0, 0] as const

/**
 * True where a JPEG begins with what a camera wrote about it: which way it was held, when and where. Markers as in ITU-T
 * T.81, annex B; APP1 that starts with `Exif\0\0` as in JEITA CP-3451, 4.7.2.
 */
export function hasExif(bytes: Uint8Array): boolean {
  let i = 2
  while (bytes[i] === 0xff && i + 4 < bytes.length) {
    const marker = bytes[i + 1]!
    if (marker === 0xe1 && mark.every((byte, k) => bytes[i + 4 + k] === byte)) return true
    // The picture itself begins: nothing is told of it behind there.
    if (marker === 0xda) return false
    i += 2 + bytes[i + 2]! * 0x100 + bytes[i + 3]!
  }
  return false
}
