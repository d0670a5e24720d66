/** Why a body was not read. */
export type BodyRefusal = 'too-large' | 'not-json'

/**
 * Reads a JSON body of at most `max` bytes, and stops reading as soon as there are more.
 *
 * @returns the parsed value, or why there is none
 */
export async function readJson(
  request: Request,
  max: number,
): Promise<{ ok: true; value: unknown } | { ok: false; why: BodyRefusal }> {
  if (Number(request.headers.get('content-length') ?? 0) > max) return { ok: false, why: 'too-large' }
  const chunks: Uint8Array[] = []
  let size = 0
  for await (const chunk of request.body ?? []) {
    size += chunk.byteLength
    if (size > max) return { ok: false, why: 'too-large' }
    chunks.push(chunk)
  }
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(chunks))
    return { ok: true, value: JSON.parse(text) }
  } catch {
    return { ok: false, why: 'not-json' }
  }
}
