import { describe, expect, it } from 'vitest'
import { hasExif } from '../../renderer/slab/picture/hasExif'

const segment = (marker: number, ...body: readonly number[]) => [0xff, marker, 0, body.length + 2, ...body]
const soi = [0xff, 0xd8]
const exif = segment(0xe1, 0x45, 0x78, 0x69, 0x66, 0, 0, 1, 2)
const jfif = segment(0xe0, 0x4a, 0x46, 0x49, 0x46, 0)
const scan = segment(0xda, 1, 2, 3)

describe('what a camera wrote into a picture', () => {
  it('is found among the segments before the picture, wherever it stands', () => {
    expect(hasExif(Uint8Array.from([...soi, ...exif, ...scan]))).toBe(true)
    expect(hasExif(Uint8Array.from([...soi, ...jfif, ...exif, ...scan]))).toBe(true)
  })

  it('is not seen in other segments, behind the picture, or in what is no JPEG', () => {
    expect(hasExif(Uint8Array.from([...soi, ...jfif, ...scan, ...exif]))).toBe(false)
    expect(hasExif(Uint8Array.from([...soi, ...segment(0xe1, 0x68, 0x74, 0x74, 0x70, 0), ...scan]))).toBe(false)
    expect(hasExif(Uint8Array.from([...soi, 0xff, 0xe1]))).toBe(false)
    expect(hasExif(new Uint8Array())).toBe(false)
  })
})
