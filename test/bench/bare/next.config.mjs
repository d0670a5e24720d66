import { fileURLToPath } from 'node:url'

export default {
  serverExternalPackages: ['pg'],
  turbopack: { root: fileURLToPath(new URL('../../..', import.meta.url)) },
}
