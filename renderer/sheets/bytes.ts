/** Bytes as base64, a piece at a time so that large files do not overflow the stack. */
export function toBase64(bytes: Uint8Array): string {
  let binary = ''
  for (let i = 0; i < bytes.length; i += 0x8000) binary += String.fromCharCode(...bytes.subarray(i, i + 0x8000))
  return btoa(binary)
}

export const textBytes = (text: string): Uint8Array => new TextEncoder().encode(text)
