import { v4 } from 'uuid'
import { SITE } from './pages.ts'

/** How tests send pictures over HTTP, piece by piece. */

export type Headers = Record<string, string>

export const announce = (headers: Headers, body: object) =>
  fetch(`${SITE}/api/v1/photos`, {
    method: 'POST',
    headers: { ...headers, 'Content-Type': 'application/json' },
    body: JSON.stringify(body),
  })
export const at = (key: string) => `${SITE}/api/v1/photos/${key}`
export const piece = (offset: number) => ({
  'Content-Type': 'application/partial-upload',
  'Upload-Offset': String(offset),
})
export const append = (headers: Headers, key: string, offset: number, body: Uint8Array) =>
  fetch(at(key), { method: 'PATCH', headers: { ...headers, ...piece(offset) }, body: body as BodyInit })

export async function outcome(headers: Headers, key: string): Promise<Record<string, unknown>> {
  for (;;) {
    const told = (await (await fetch(at(key), { headers })).json()) as Record<string, unknown>
    if (told.state !== 'waiting') return told
  }
}

/** Sends a picture whole; resolves with its digest. */
export async function send(headers: Headers, file: Buffer): Promise<string> {
  const key = v4()
  await announce(headers, { key, size: file.length })
  await append(headers, key, 0, file)
  const { photo } = (await outcome(headers, key)) as { photo: { sha256: string } }
  return photo.sha256
}
