import { once } from 'node:events'
import { type AddressInfo, connect, createServer, type Socket } from 'node:net'

/** A way to the site that can be cut, as a signal goes: whoever asks then finds nobody there. */
export interface Relay {
  readonly url: string
  cut(): Promise<void>
  /** There is a signal, but what stands before the site says that it is away. */
  away(): Promise<void>
  mend(): Promise<void>
  close(): Promise<void>
}

/** Opens a relay to a site on this machine, at a port of its own. */
export async function openRelay(site: string): Promise<Relay> {
  const { port: to, hostname } = new URL(site)
  const open = new Set<Socket>()
  let isAway = false
  const server = createServer((near) => {
    if (isAway) {
      near.once('data', () => near.end('HTTP/1.1 502 Bad Gateway\r\nContent-Length: 4\r\n\r\naway'))
      near.on('error', () => near.destroy())
      return
    }
    const far = connect(Number(to), hostname)
    for (const [one, other] of [
      [near, far],
      [far, near],
    ] as const) {
      open.add(one)
      one.pipe(other)
      one.on('error', () => other.destroy())
      one.on('close', () => {
        open.delete(one)
        other.destroy()
      })
    }
  })
  const listen = async (port: number) => {
    server.listen(port, '127.0.0.1')
    await once(server, 'listening')
  }
  const cut = async () => {
    const closed = new Promise((resolve) => server.close(resolve))
    for (const one of open) one.destroy()
    await closed
  }
  await listen(0)
  const { port } = server.address() as AddressInfo
  return {
    url: `http://127.0.0.1:${port}`,
    cut,
    away: async () => {
      await cut()
      isAway = true
      await listen(port)
    },
    mend: async () => {
      if (server.listening) await cut()
      isAway = false
      await listen(port)
    },
    close: async () => {
      if (server.listening) await cut()
    },
  }
}
