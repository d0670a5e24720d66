/**
 * Whether a request that changes something comes from a page of this site: what a browser sends along with a form or
 * a fetch says so. A program that sends neither header carries no cookie of a person's browser either.
 */
export function isOurs(request: Request): boolean {
  const site = request.headers.get('sec-fetch-site')
  if (site !== null) return site === 'same-origin' || site === 'none'
  const origin = request.headers.get('origin')
  if (origin === null) return true
  const host = request.headers.get('x-forwarded-host') ?? request.headers.get('host')
  return URL.canParse(origin) && new URL(origin).host === host
}
