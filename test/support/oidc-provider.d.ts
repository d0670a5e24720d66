/** As much of the package as the tests use; it carries no types of its own. */
declare module 'oidc-provider' {
  import type { RequestListener } from 'node:http'
  export default class Provider {
    constructor(issuer: string, configuration: Readonly<Record<string, unknown>>)
    callback(): RequestListener
  }
}
