import { createHash } from 'node:crypto'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import exifReader from 'exif-reader'
import sharp from 'sharp'
import { afterAll, describe, expect, it } from 'vitest'
import { encodePhoto, screensOf, widthsOf } from '#lib/photos/encode.ts'
import { fileKind } from '#lib/photos/kind.ts'
import { likenessOf } from '#lib/photos/likeness.ts'
import { bomb, drawing, jpeg, png, telephonePicture, webp } from './pictures.ts'

const folder = mkdtempSync(join(tmpdir(), 'putlog-encode-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

let files = 0
const encode = (bytes: Uint8Array) => {
  files += 1
  const path = join(folder, String(files))
  writeFileSync(path, bytes)
  return encodePhoto(path)
}
const refusal = (code: string) =>
  expect.objectContaining({ faults: [expect.objectContaining({ field: 'photo', code })] })

const bits = (likeness: string) => BigInt(`0x${likeness}`).toString(2).padStart(64, '0')
const apart = (a: string, b: string) => [...bits(a)].filter((bit, i) => bit !== bits(b)[i]).length

describe('encodePhoto(path)', () => {
  it.each([
    ['JPEG', jpeg],
    ['PNG', png],
    ['WebP', webp],
  ])('makes an upright JPEG in sRGB of a %s, named by its own SHA-256', async (_name, make) => {
    const { kept, sha256, width, height } = await encode(await make())
    const read = await sharp(kept).metadata()
    expect(read).toMatchObject({ format: 'jpeg', space: 'srgb', width: 1600, height: 1200 })
    expect([width, height]).toEqual([1600, 1200])
    expect(sha256).toBe(createHash('sha256').update(kept).digest('hex'))
  })

  it('leaves position, camera, colour profile and turn behind, and says the camera’s day', async () => {
    const taken = await telephonePicture()
    // An outside reader finds the position in what was sent, so that its absence below means something.
    const sent = exifReader((await sharp(taken).metadata()).exif ?? Buffer.alloc(0))
    expect(sent.GPSInfo?.GPSLatitude).toEqual([58, 22, 30])
    const { kept, takenOn, width, height } = await encode(taken)
    const { exif, icc, xmp, iptc, orientation } = await sharp(kept).metadata()
    expect({ exif, icc, xmp, iptc, orientation }).toEqual({})
    expect(kept.includes('Invented') || kept.includes('Exif') || kept.includes('Somebody')).toBe(false)
    expect(takenOn).toBe('2024-06-30')
    expect([width, height]).toEqual([1200, 1600])
  })

  it('makes a large picture no larger than 4096 pixels on a side', async () => {
    const { width, height } = await encode(await jpeg({ width: 6000, height: 1500 }))
    expect([width, height]).toEqual([4096, 1024])
  })

  it('gives the same picture the same name again', async () => {
    const file = await jpeg({ seed: 3 })
    expect((await encode(file)).sha256).toBe((await encode(file)).sha256)
  })

  it.each([
    ['text', Buffer.from('a wall of words')],
    ['nothing', Buffer.alloc(0)],
    ['SVG', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>')],
    ['GIF', Buffer.from('GIF89a\x01\x00\x01\x00\x00\x00\x00;', 'latin1')],
    ['a TIFF', Buffer.from('II*\x00\x08\x00\x00\x00', 'latin1')],
  ])('refuses %s as no picture that it takes', async (_name, bytes) => {
    await expect(encode(bytes)).rejects.toEqual(refusal('photo-kind'))
  })

  it('refuses HEIC by name', async () => {
    const bytes = Buffer.from('\x00\x00\x00\x18ftypheic\x00\x00\x00\x00mif1heic', 'latin1')
    await expect(encode(bytes)).rejects.toEqual(refusal('photo-heic'))
  })

  it('refuses a bomb by the size it claims, without unpacking it', async () => {
    const file = bomb(30_000)
    expect(file.length).toBeLessThan(200_000)
    const refused = await encode(file).catch((error: unknown) => error)
    expect(refused).toEqual(refusal('photo-too-many-pixels'))
    expect(refused).toMatchObject({ faults: [{ value: 900, limit: 64 }] })
  })

  it.each([
    ['JPEG', jpeg],
    ['PNG', png],
    ['WebP', webp],
  ])('refuses a %s that is cut off', async (_name, make) => {
    const whole = await make()
    for (const part of [0.9, 0.5, 0.01])
      await expect(encode(whole.subarray(0, Math.ceil(whole.length * part)))).rejects.toEqual(
        refusal('photo-cut-off'),
      )
  })

  it('refuses a file that only begins like a picture', async () => {
    await expect(encode(Buffer.from('\xff\xd8\xff\xe0 and then words', 'latin1'))).rejects.toEqual(
      refusal('photo-cut-off'),
    )
  })

  it('refuses a damaged PNG', async () => {
    const file = Buffer.from(await png())
    const middle = Math.floor(file.length / 2)
    file.fill(0x55, middle, middle + 400)
    await expect(encode(file)).rejects.toEqual(refusal('photo-cut-off'))
  })
})

describe('likeness', () => {
  it('stays near when the same picture is made smaller, darker and packed harder', async () => {
    const first = await encode(await jpeg({ seed: 5 }))
    const again = await sharp(first.kept)
      .resize(640)
      .modulate({ brightness: 0.85 })
      .jpeg({ quality: 40 })
      .toBuffer()
    expect(apart(first.likeness, (await encode(again)).likeness)).toBeLessThanOrEqual(6)
  })

  it('is far apart for other pictures', async () => {
    const [a, b] = [await encode(await jpeg({ seed: 5 })), await encode(await jpeg({ seed: 6 }))]
    expect(apart(a.likeness, b.likeness)).toBeGreaterThan(10)
  })

  it('is one bit for each pixel lighter than the one to its right', () => {
    const row = [9, 8, 7, 6, 5, 4, 3, 2, 1]
    const rising = [...row].reverse()
    expect(likenessOf(Uint8Array.from([row, rising, row, rising, row, rising, row, rising].flat()))).toBe(
      'ff00ff00ff00ff00',
    )
    expect(likenessOf(new Uint8Array(72))).toBe('0000000000000000')
    expect(() => likenessOf(new Uint8Array(71))).toThrow(RangeError)
  })
})

describe('screensOf(kept, width)', () => {
  it('makes each width once in each format, none wider than the picture', async () => {
    const kept = await sharp(drawing(1, 1000, 700), { raw: { width: 1000, height: 700, channels: 3 } })
      .jpeg()
      .toBuffer()
    const made: string[] = []
    for await (const { width, format, data } of screensOf(kept, 1000)) {
      const read = await sharp(data).metadata()
      expect(read.width).toBe(width)
      expect(read.format).toBe(format === 'jpg' ? 'jpeg' : 'webp')
      made.push(`${width}.${format}`)
    }
    expect(made).toEqual(['320.webp', '320.jpg', '768.webp', '768.jpg', '1000.webp', '1000.jpg'])
  })

  it.each([
    [100, [100]],
    [320, [320]],
    [321, [320, 321]],
    [2048, [320, 768, 1280, 2048]],
    [4096, [320, 768, 1280, 2048]],
  ])('for %i pixels gives the widths %j', (width, widths) => {
    expect(widthsOf(width)).toEqual(widths)
  })
})

describe('fileKind(head)', () => {
  it('goes by the file’s own signature', async () => {
    const head = async (make: () => Promise<Buffer>) => fileKind((await make()).subarray(0, 16))
    expect([await head(jpeg), await head(png), await head(webp)]).toEqual(['jpeg', 'png', 'webp'])
    expect(fileKind(new Uint8Array(3))).toBe('other')
  })
})
