import { readFile } from 'node:fs/promises'
import { WORKER } from '#lib/cli/worker-file.ts'

/**
 * The worker that keeps pages for where there is no signal. From the root, so that it answers for every page; asked
 * about each time, so that a new one takes over. A site that follows its sources has none.
 */
export async function GET(): Promise<Response> {
  try {
    const script = await readFile(WORKER)
    const headers = { 'Content-Type': 'text/javascript; charset=utf-8', 'Cache-Control': 'no-cache' }
    return new Response(new Uint8Array(script), { headers })
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error
    return new Response(null, { status: 404 })
  }
}
