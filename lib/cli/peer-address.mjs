// Loaded into the site's process: adds the address that each request came from to what its client and the proxies say,
// as a proxy would. The framework tells it only where no header claims another.
import { subscribe } from 'node:diagnostics_channel'

subscribe('http.server.request.start', (message) => {
  const { headers, socket } = /** @type {{ request: import('node:http').IncomingMessage }} */ (message)
    .request
  headers['x-forwarded-for'] = [headers['x-forwarded-for'], socket.remoteAddress].filter(Boolean).join(', ')
})
