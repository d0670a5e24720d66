import { rm } from 'node:fs/promises'
import { Readable } from 'node:stream'
import { Busboy, type BusboyFileStream, type BusboyHeaders } from '@fastify/busboy'
import { Refusal } from '#lib/errors.ts'
import { MAX_BYTES } from '#lib/photos/limits.ts'
import { type Received, receive } from '#lib/photos/receive.ts'
import { words } from '../../_words/index.ts'

/** Most files of one form; each has its own bound. */
const MAX_FILES = 30

export interface PhotoForm {
  /** Text fields by name. */
  readonly fields: Readonly<Record<string, string>>
  /** Each file as it came, in order; a choice of no file is none. Whoever reads the form removes them. */
  readonly files: readonly Received[]
}

/**
 * Reads a form with files, each written to disk as it arrives.
 *
 * @throws Refusal `invalid` for what is no form, or breaks off before its end
 */
export async function readPhotoForm(request: Request): Promise<PhotoForm> {
  const fields: Record<string, string> = {}
  const streams: BusboyFileStream[] = []
  const nameless: boolean[] = []
  const arriving: Promise<Received>[] = []
  try {
    await readParts(
      request,
      (name, value) => {
        fields[name] = value
      },
      (file, name) => {
        nameless.push(name === '')
        // It may fail before anyone reads from it, and an error that nobody listens for ends the process.
        file.on('error', () => file.destroy())
        streams.push(file)
        const received = receiveFile(file)
        // Should the disk fail, the rest is read past, and the failure told below.
        received.catch(() => file.resume())
        arriving.push(received)
      },
    )
  } catch {
    // The parser leaves a file open that broke off with the form.
    for (const stream of streams) stream.destroy(new Error('the form broke off'))
    await discard(await Promise.all(arriving))
    throw new Refusal('invalid', words('photos')('upload.noForm'))
  }
  const files = await Promise.all(arriving)
  // A browser sends a choice of no file as an empty one without a name; one with a name is an empty file.
  const isNone = ({ bytes }: Received, at: number) => bytes === 0 && nameless[at] === true
  await discard(files.filter(isNone))
  return { fields, files: files.filter((file, at) => !isNone(file, at)) }
}

function readParts(
  request: Request,
  onField: (name: string, value: string) => void,
  onFile: (file: BusboyFileStream, name: string) => void,
): Promise<void> {
  return new Promise((resolve, reject) => {
    const parser = new Busboy({
      headers: Object.fromEntries(request.headers) as BusboyHeaders,
      limits: { files: MAX_FILES, fileSize: MAX_BYTES, fields: 10, fieldSize: 2000, parts: MAX_FILES + 10 },
    })
    parser.on('field', onField)
    parser.on('file', (_field, file, name?: string) => onFile(file, name ?? ''))
    parser.on('finish', resolve)
    parser.on('error', reject)
    Readable.from(request.body ?? [])
      .on('error', reject)
      .pipe(parser)
  })
}

/** The parser drops what is above the bound and says so. */
async function receiveFile(file: BusboyFileStream): Promise<Received> {
  const received = await receive(file, MAX_BYTES)
  return file.truncated ? { ...received, end: 'too-long' } : received
}

const discard = async (files: readonly Received[]) => {
  for (const { path } of files) await rm(path, { force: true })
}
