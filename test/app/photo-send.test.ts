import { afterEach, describe, expect, it, vi } from 'vitest'
import { NotTaken, sendPhoto } from '../../app/_ui/photo-send.ts'

afterEach(() => vi.unstubAllGlobals())

/** How a file ends whose announcement is answered so. */
async function endOf(status: number, body: unknown): Promise<unknown> {
  vi.stubGlobal('fetch', async () => Response.json(body, { status }))
  const options = {
    key: 'a-key',
    keepDate: false,
    onProgress: () => {},
    signal: new AbortController().signal,
  }
  return sendPhoto(new Blob(['not a picture']), options).catch((error: unknown) => error)
}

const refused = (code: string) => ({
  ...{ state: 'refused', size: 13, offset: 13, known: false, photo: null },
  fault: { field: 'photo', code, detail: `It is ${code}.` },
})

describe('sendPhoto(file, options)', () => {
  it.each(['photo-kind', 'photo-heic', 'photo-too-many-pixels', 'photo-cut-off', 'photo-erased'])(
    'says of %s that it is no use to send the file again',
    async (code) => {
      const end = await endOf(200, refused(code))
      expect(end).toBeInstanceOf(NotTaken)
      expect(end).toMatchObject({ message: `It is ${code}.`, isFinal: true })
    },
  )

  it.each(['photo-digest', 'photo-unworkable'])(
    'says of %s that it may go well another time',
    async (code) => {
      expect(await endOf(200, refused(code))).toMatchObject({ message: `It is ${code}.`, isFinal: false })
    },
  )

  it('tells a file that is refused as it is announced from an upload that is not', async () => {
    const errors = [{ field: 'photo', code: 'photo-too-large', detail: 'Too large.' }]
    expect(await endOf(422, { detail: 'No.', errors })).toMatchObject({
      message: 'Too large.',
      isFinal: true,
    })
    const signedOut = await endOf(401, { detail: 'Sign in first.' })
    expect(signedOut).toMatchObject({ message: 'Sign in first.', isFinal: false })
    expect(await endOf(429, { detail: 'Too many.' })).toMatchObject({ isFinal: false })
  })
})
