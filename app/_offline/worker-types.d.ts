/*
 * What the worker uses of its surroundings. The compiler's own library for workers cannot stand beside the one for
 * pages, and the packages' types rest on it.
 */
interface ExtendableEvent extends Event {
  waitUntil(work: Promise<unknown>): void
}

interface WorkerMessageEvent extends ExtendableEvent {
  readonly data: unknown
}

interface WorkerScope {
  readonly location: Location
  readonly clients: { matchAll(): Promise<readonly { postMessage(message: unknown): void }[]> }
  skipWaiting(): Promise<void>
  addEventListener(type: 'install' | 'activate', listen: (event: ExtendableEvent) => void): void
  addEventListener(type: 'message', listen: (event: WorkerMessageEvent) => void): void
}

interface RouteGiven {
  readonly request: Request
  readonly url: URL
  readonly event: ExtendableEvent
}

declare module 'workbox-core' {
  export function clientsClaim(): void
}

declare module 'workbox-routing' {
  export function registerRoute(
    fits: (given: RouteGiven & { readonly sameOrigin: boolean }) => boolean,
    answer: ((given: RouteGiven) => Promise<Response>) | import('workbox-strategies').Strategy,
  ): void
}

declare module 'workbox-strategies' {
  interface Plugin {
    readonly cachedResponseWillBeUsed?: (given: {
      readonly request: Request
      readonly cachedResponse?: Response
    }) => Promise<Response | undefined>
  }
  export interface Strategy {
    handle(given: { readonly request: Request; readonly event: ExtendableEvent }): Promise<Response>
  }
  type Make = new (options: { readonly cacheName: string; readonly plugins?: readonly Plugin[] }) => Strategy
  export const CacheFirst: Make
  export const NetworkFirst: Make
}

declare module 'workbox-expiration' {
  export class CacheExpiration {
    constructor(store: string, options: { readonly maxEntries: number })
    updateTimestamp(url: string): Promise<void>
    expireEntries(): Promise<void>
    delete(): Promise<void>
  }
}
