import { clientsClaim } from 'workbox-core'
import { registerRoute } from 'workbox-routing'
import { CacheFirst, NetworkFirst } from 'workbox-strategies'
import { answerPage, answerPhoto, keepOpened, prepare } from './answers.ts'
import { FILES, forgetStaleFiles } from './copies.ts'
import { checkStanding } from './standing.ts'

/*
 * The worker that keeps opened pages for where there is no signal. A new one takes over at once: files of the build are
 * named by what is in them, and those of an earlier build stay for the pages that were kept with them.
 */

const worker = self as unknown as WorkerScope

void worker.skipWaiting()
clientsClaim()

worker.addEventListener('install', (event) => event.waitUntil(prepare()))
worker.addEventListener('activate', (event) => event.waitUntil(forgetStaleFiles()))

registerRoute(
  ({ sameOrigin, url }) => sameOrigin && url.pathname.startsWith('/_next/static/'),
  new CacheFirst({
    cacheName: FILES,
    plugins: [
      {
        cachedResponseWillBeUsed: async ({ request, cachedResponse }) =>
          cachedResponse ?? caches.match(request),
      },
    ],
  }),
)
registerRoute(
  ({ sameOrigin, url }) => sameOrigin && /^\/(?:icon\.svg|map\/world\.svg)$/.test(url.pathname),
  new NetworkFirst({ cacheName: FILES }),
)
registerRoute(
  ({ sameOrigin, url }) => sameOrigin && /^\/photos\/[0-9a-f]{64}\/\d+\.(?:webp|jpg)$/.test(url.pathname),
  answerPhoto,
)
registerRoute(({ sameOrigin, request }) => sameOrigin && request.mode === 'navigate', answerPage)

/** What a page tells: that it was opened, or that there is a signal again. */
type Message =
  | { readonly kind: 'opened'; readonly address: string; readonly loaded: boolean; readonly passed: boolean }
  | { readonly kind: 'online' }

worker.addEventListener('message', (event) => event.waitUntil(hear(event.data as Message)))

async function hear(message: Message): Promise<void> {
  if (message.kind === 'opened') await keepOpened(message)
  const told = await checkStanding(message.kind === 'online')
  if (told.length === 0) return
  for (const page of await worker.clients.matchAll()) page.postMessage({ told })
}
