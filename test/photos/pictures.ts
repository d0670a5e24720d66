import { deflateSync } from 'node:zlib'
import sharp from 'sharp'

/** Pictures for tests, made from numbers: the same on every run. */

/** Bands and blocks that no two seeds share, so that pictures differ to the eye and to a likeness. */
export function drawing(seed: number, width = 1600, height = 1200): Buffer {
  const pixels = Buffer.alloc(width * height * 3)
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const block = Math.floor((x * 7) / width) * 31 + Math.floor((y * 7) / height) * 17
      const at = (y * width + x) * 3
      const tone = (Math.imul(block + 1 + seed * 1013, 2654435761) >>> 24) & 0xff
      pixels[at] = tone
      pixels[at + 1] = (tone + Math.floor((x * 40) / width)) & 0xff
      pixels[at + 2] = (tone + Math.floor((y * 40) / height)) & 0xff
    }
  return pixels
}

interface Options {
  readonly seed?: number
  readonly width?: number
  readonly height?: number
}

const image = ({ seed = 1, width = 1600, height = 1200 }: Options) =>
  sharp(drawing(seed, width, height), { raw: { width, height, channels: 3 } })

export const jpeg = (options: Options = {}): Promise<Buffer> =>
  image(options).jpeg({ quality: 92 }).toBuffer()
export const png = (options: Options = {}): Promise<Buffer> => image(options).png().toBuffer()
export const webp = (options: Options = {}): Promise<Buffer> => image(options).webp().toBuffer()

/** A JPEG as a telephone writes it: position, maker, date and a turn of the camera. */
export const telephonePicture = (options: Options = {}): Promise<Buffer> =>
  image(options)
    .jpeg({ quality: 92 })
    .withExif({
      IFD0: { Make: 'Invented', Model: 'Test camera', Copyright: 'Somebody' },
      IFD2: { DateTimeOriginal: '2024:06:30 23:10:05' },
      IFD3: {
        GPSLatitudeRef: 'N',
        GPSLatitude: '58/1 22/1 30/1',
        GPSLongitudeRef: 'E',
        GPSLongitude: '26/1 43/1 12/1',
      },
    })
    .withMetadata({ orientation: 6 })
    .toBuffer()

/** A picture of many bytes: noise hardly packs. */
export async function heavy(megabytes: number, seed = 9): Promise<Buffer> {
  const side = Math.ceil(Math.sqrt((megabytes * 1024 * 1024) / 3))
  const noise = Buffer.alloc(side * side * 3)
  let state = seed >>> 0 || 1
  for (let i = 0; i < noise.length; i += 1) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    noise[i] = state >>> 24
  }
  return sharp(noise, { raw: { width: side, height: side, channels: 3 } })
    .png({ compressionLevel: 0 })
    .toBuffer()
}

/** A PNG of a few kilobytes that claims, and would unpack to, side × side grey pixels. */
export function bomb(side: number): Buffer {
  const header = Buffer.alloc(13)
  header.writeUInt32BE(side, 0)
  header.writeUInt32BE(side, 4)
  header.set([1, 0, 0, 0, 0], 8)
  const rows = deflateSync(Buffer.alloc((Math.ceil(side / 8) + 1) * side), { level: 9 })
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', header),
    chunk('IDAT', rows),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

function chunk(kind: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(kind, 'latin1'), data])
  const framed = Buffer.alloc(8)
  framed.writeUInt32BE(data.length, 0)
  framed.writeUInt32BE(crc32(body), 4)
  return Buffer.concat([framed.subarray(0, 4), body, framed.subarray(4)])
}

/** CRC-32 as PNG (ISO/IEC 15948, annex D) has it. */
function crc32(data: Buffer): number {
  let crc = 0xffffffff
  for (const byte of data) {
    crc ^= byte
    for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1
  }
  return (crc ^ 0xffffffff) >>> 0
}
