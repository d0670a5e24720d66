import { once } from 'node:events'
import { type AddressInfo, connect, createServer, type Socket } from 'node:net'

/** A way to the site that can be cut, as a signal goes: whoever asks then finds nobody there. */
export interface Relay {
  readonly url: string
  cut(): Promise<void>
  mend(): Promise<void>
  close(): Promise<void>
}

/** Opens a relay to a site on this machine, at a port of its own. */
export async function openRelay(site: string): Promise<Relay> {
  const { port: to, hostname } = new URL(site)
  const open = new Set<Socket>()
  const server = createServer((near) => {
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
    mend: () => listen(port),
    close: async () => {
      if (server.listening) await cut()
    },
  }
}
