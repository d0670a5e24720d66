/** Largest file taken, in bytes: 25 MB. */
export const MAX_BYTES = 25 * 1024 * 1024

/** Most pixels of a picture: what the cameras of telephones take, and no more than this machine can hold at once. */
export const MAX_PIXELS = 64_000_000

/** Longest side of the picture that is kept, in pixels. */
export const KEPT_SIDE = 4096

/** Widths for screens, in pixels; a picture is never made wider than it is. */
export const WIDTHS = [320, 768, 1280, 2048] as const

export const FORMATS = ['webp', 'jpg'] as const
export type Format = (typeof FORMATS)[number]

/** Pieces that one file may come in: each is kept apart until the file is whole. */
export const MAX_PIECES = 400

/** Files that one account may have on their way at once, and begin within a day. */
export const MAX_OPEN = 60
export const MAX_A_DAY = 600

/** Bits of 64 in which two pictures of one thing may differ and still be called alike. */
export const ALIKE_BITS = 10
