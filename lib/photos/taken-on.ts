import exifReader from 'exif-reader'

/** The day that the camera wrote, `YYYY-MM-DD` in its own time; null when it wrote none that can be read. */
export function takenOn(exif: Buffer | undefined): string | null {
  if (exif === undefined) return null
  try {
    const read = exifReader(exif)
    const at = read.Photo?.DateTimeOriginal ?? read.Photo?.DateTimeDigitized
    // Cameras write their own clock without a zone; the reader takes it as UTC, so the day is the camera's.
    if (!(at instanceof Date) || Number.isNaN(at.getTime())) return null
    const day = at.toISOString().slice(0, 10)
    return day >= '1990-01-01' && at.getTime() < Date.now() + 86_400_000 ? day : null
  } catch {
    return null
  }
}
