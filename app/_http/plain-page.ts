import { askedLanguage } from '#app/asked.ts'
import type { Problem } from '#lib/api/problem.ts'
import { locale, words } from '../_words/index.ts'
import { inLanguage } from '../_words/language.ts'
import type { Language } from '../_words/languages.ts'
import { contentSecurityPolicy, makeNonce, securityHeaders } from './security.ts'

const STYLE = `
:root { color-scheme: light dark; }
body { max-width: 34rem; margin: 12vh auto; padding: 0 1.25rem; font: 1.125rem/1.55 Georgia, 'Times New Roman', serif; color: #2a2520; background: #faf8f2; }
h1 { font-size: 1.6rem; font-weight: 600; line-height: 1.2; }
a { color: inherit; display: inline-block; padding: 0.6rem 0; }
@media (prefers-color-scheme: dark) { body { color: #e9e3d6; background: #1d1a17; } }
`

/** Seconds until the waiting page asks again. */
export const RETRY_S = 5

/** Says that the database is away: a page that asks again by itself. */
export function waitingPage(secure: boolean, language: Language): Response {
  const t = words('faults', language)
  return plainPage(503, t('unavailable.title'), secure, language, {
    head: `<meta http-equiv="refresh" content="${RETRY_S}">\n`,
    body: `<p>${t('unavailable.lead')}</p>
<p>${t('unavailable.next')}</p>
<p><a href="">${t('unavailable.again')}</a></p>`,
    headers: { 'Retry-After': String(RETRY_S) },
  })
}

/** Says why a request was turned away at the gate, and leads to where there are shorter addresses. */
export function refusalPage(status: number, lead: string, secure: boolean, language: Language): Response {
  const t = words('faults', language)
  const title = t(status === 414 ? 'excess.address' : 'excess.body')
  const body = `<p>${lead}</p>
<p>${t('excess.next')}</p>
<p><a href="${inLanguage('/', language)}">${t('excess.home')}</a></p>`
  return plainPage(status, title, secure, language, { body })
}

/** Says why a plain form with files was refused as a whole, and leads back to the page that it stood on. */
export function notTakenPage({ status, detail }: Problem, back: string, secure: boolean): Response {
  const t = words('faults')
  const lead = detail ?? t(status === 503 ? 'unavailable.lead' : 'notTaken.fault')
  const body = `<p>${lead}</p>
<p><a href="${back.replaceAll(/[<>"'&]/g, (sign) => `&#${sign.charCodeAt(0)};`)}">${t('notTaken.back')}</a></p>`
  return plainPage(status, t('notTaken.title'), secure, askedLanguage(), { body })
}

/** A page that stands on nothing: no database, no script, no file beside it. Its words are ours alone. */
function plainPage(
  status: number,
  title: string,
  secure: boolean,
  language: Language,
  { head = '', body, headers }: { head?: string; body: string; headers?: Record<string, string> },
): Response {
  const nonce = makeNonce()
  const html = `<!doctype html>
<html lang="${locale(language)}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="robots" content="noindex">
${head}<title>${title}</title>
<style nonce="${nonce}">${STYLE}</style>
</head>
<body>
<main>
<h1>${title}</h1>
${body}
</main>
</body>
</html>
`
  return new Response(html, {
    status,
    headers: {
      'Content-Type': 'text/html; charset=utf-8',
      'Content-Security-Policy': contentSecurityPolicy(nonce, false, secure),
      'Cache-Control': 'no-store',
      ...headers,
      ...securityHeaders(secure),
    },
  })
}
