import { createHash } from 'node:crypto'
import { open } from 'node:fs/promises'
import sharp, { type Sharp } from 'sharp'
import { type FieldFault, Refusal } from '#lib/errors.ts'
import { fileKind, HEAD_BYTES } from './kind.ts'
import { HASH_HEIGHT, HASH_WIDTH, likenessOf } from './likeness.ts'
import { FORMATS, type Format, KEPT_SIDE, MAX_PIXELS, WIDTHS } from './limits.ts'
import { takenOn } from './taken-on.ts'

// One picture at a time on one thread: pages are served by the same process.
sharp.concurrency(1)
sharp.cache(false)

/** Longest that one step on one picture may take, in seconds. */
const STEP_S = 60

/** A picture made from a file: pixels alone, upright, in sRGB. */
export interface Encoded {
  /** SHA-256 of `kept`, 64 hexadecimal digits: the name of the picture. */
  readonly sha256: string
  readonly kept: Buffer
  readonly width: number
  readonly height: number
  /** See {@link likenessOf}. */
  readonly likeness: string
  /** The camera's day, `YYYY-MM-DD`, when it wrote one. */
  readonly takenOn: string | null
}

/**
 * Makes the picture that is kept: a JPEG of at most 4096 pixels on its longer side. Everything else in the file,
 * position and camera among it, is left behind.
 *
 * @throws Refusal `invalid` with the one fault of field `photo`: not a picture, HEIC, too many pixels, cut off
 */
export async function encodePhoto(path: string): Promise<Encoded> {
  const kind = fileKind(await headOf(path))
  if (kind === 'heic') throw photoFault('photo-heic')
  if (kind === 'other') throw photoFault('photo-kind')
  const { width, height, exif } = await reading(() => sharp(path, { limitInputPixels: false }).metadata())
  if (width * height > MAX_PIXELS)
    throw photoFault('photo-too-many-pixels', Math.round((width * height) / 1e6), MAX_PIXELS / 1e6)
  const kept = await reading(() =>
    sharp(path, { limitInputPixels: MAX_PIXELS, failOn: 'error', sequentialRead: true })
      .autoOrient()
      .resize({ width: KEPT_SIDE, height: KEPT_SIDE, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .jpeg({ quality: 88 })
      .timeout({ seconds: STEP_S })
      .toBuffer(),
  )
  return {
    sha256: createHash('sha256').update(kept).digest('hex'),
    kept,
    ...(await sizeUp(kept)),
    takenOn: takenOn(exif),
  }
}

/** Width, height and likeness of a picture that is ready to be kept. */
export async function sizeUp(kept: Buffer): Promise<Pick<Encoded, 'width' | 'height' | 'likeness'>> {
  const { width, height } = await sharp(kept).metadata()
  const grey = await sharp(kept)
    .greyscale()
    .resize({ width: HASH_WIDTH, height: HASH_HEIGHT, fit: 'fill' })
    .raw()
    .toBuffer()
  return { width, height, likeness: likenessOf(grey) }
}

/** Widths that a picture of this width is stored in for screens. */
export const widthsOf = (width: number): number[] => [
  ...WIDTHS.filter((one) => one < width),
  ...(width <= Math.max(...WIDTHS) ? [width] : []),
]

/** The picture for screens: every width in every format, made one after the other. */
export async function* screensOf(
  kept: Buffer,
  width: number,
): AsyncGenerator<{ width: number; format: Format; data: Buffer }> {
  for (const one of widthsOf(width))
    for (const format of FORMATS) {
      const image = sharp(kept).resize({ width: one, withoutEnlargement: true }).timeout({ seconds: STEP_S })
      yield { width: one, format, data: await ENCODERS[format](image).toBuffer() }
    }
}

const ENCODERS: Record<Format, (image: Sharp) => Sharp> = {
  webp: (image) => image.webp({ quality: 76 }),
  jpg: (image) => image.jpeg({ quality: 78, mozjpeg: true }),
}

/** A refusal of one picture: a fault of the field `photo`. */
export const photoFault = (code: string, value?: string | number, limit?: string | number): Refusal => {
  const fault: FieldFault = {
    field: 'photo',
    code,
    ...(value !== undefined && { value }),
    ...(limit !== undefined && { limit }),
  }
  return new Refusal('invalid', 'This file cannot be taken.', [fault])
}

async function headOf(path: string): Promise<Uint8Array> {
  const file = await open(path)
  try {
    const { buffer, bytesRead } = await file.read(new Uint8Array(HEAD_BYTES), 0, HEAD_BYTES, 0)
    return buffer.subarray(0, bytesRead)
  } finally {
    await file.close()
  }
}

/** The signature fits, so whatever the decoder trips over is damage. */
async function reading<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work()
  } catch {
    throw photoFault('photo-cut-off')
  }
}
