/** What the first bytes of a file say that it is. */
export type FileKind = 'jpeg' | 'png' | 'webp' | 'heic' | 'other'

/** Brands of files that hold pictures coded as HEVC. */
const HEIC_BRANDS = ['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'mif1', 'msf1']

/** Bytes needed to tell. */
export const HEAD_BYTES = 16

/** The kind of a file by its own signature; its name and what the sender calls it count for nothing. */
export function fileKind(head: Uint8Array): FileKind {
  const text = (from: number, to: number) => String.fromCharCode(...head.subarray(from, to))
  if (head[0] === 0xff && head[1] === 0xd8 && head[2] === 0xff) return 'jpeg'
  if (text(0, 8) === '\x89PNG\r\n\x1a\n') return 'png'
  if (text(0, 4) === 'RIFF' && text(8, 12) === 'WEBP') return 'webp'
  if (text(4, 8) === 'ftyp' && HEIC_BRANDS.includes(text(8, 12))) return 'heic'
  return 'other'
}
