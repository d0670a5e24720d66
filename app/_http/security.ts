import { randomBytes } from 'node:crypto'

/** Longest address answered, in characters; a job with every field filled takes about a quarter. */
export const MAX_ADDRESS = 6000

/** Largest request body taken, in bytes. */
export const MAX_BODY = 64 * 1024

/** A fresh value that marks the scripts and styles of one answer as ours. */
export const makeNonce = () => randomBytes(18).toString('base64')

/**
 * What the browser may load: our own files, and inline scripts and styles that carry this answer's nonce.
 *
 * @param developing the framework's development tools evaluate code and style themselves; the built site
 *   never does
 * @param secure came over https, so nothing may be fetched over plain http
 */
export const contentSecurityPolicy = (nonce: string, developing: boolean, secure: boolean): string =>
  [
    "default-src 'none'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${developing ? " 'unsafe-eval'" : ''}`,
    developing ? "style-src 'self' 'unsafe-inline'" : `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' data:",
    "font-src 'self'",
    "connect-src 'self'",
    "manifest-src 'self'",
    "worker-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
    ...(secure ? ['upgrade-insecure-requests'] : []),
  ].join('; ')

/** What a page may ask the device for: nothing, but where somebody writes on site. */
const DEVICE = ['camera', 'microphone', 'geolocation', 'payment', 'usb', 'interest-cohort', 'browsing-topics']
type Device = 'camera' | 'geolocation'

const devicePolicy = (allowed: readonly Device[]): string =>
  DEVICE.map((name) => `${name}=(${allowed.includes(name as Device) ? 'self' : ''})`).join(', ')

/**
 * Headers for every answer, page or not.
 *
 * @param allowed what the page may ask the device for
 */
export const securityHeaders = (
  secure: boolean,
  allowed: readonly Device[] = [],
): Record<string, string> => ({
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'strict-origin-when-cross-origin',
  'Permissions-Policy': devicePolicy(allowed),
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  ...(secure && { 'Strict-Transport-Security': 'max-age=31536000' }),
})
