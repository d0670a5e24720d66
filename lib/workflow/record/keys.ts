import {
  createHash,
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  type KeyObject,
  sign,
  verify,
} from 'node:crypto'
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { canonicalJson } from '#lib/entry/digest.ts'

/** What was signed, by which key, and the signature (base64) over its canonical form. */
export interface Signed<T> {
  readonly payload: T
  /** PEM of the public key, so that the signature can be checked anywhere. */
  readonly publicKey: string
  readonly signature: string
}

const files = (dataDir: string) => ({
  secret: join(dataDir, 'keys', 'heads.pem'),
  open: join(dataDir, 'keys', 'heads.pub.pem'),
})

/** The Ed25519 key that signs heads, made at first use; only the owner of the data folder can read it. */
function signingKey(dataDir: string): KeyObject {
  const { secret, open } = files(dataDir)
  if (!existsSync(secret)) {
    const { privateKey, publicKey } = generateKeyPairSync('ed25519')
    mkdirSync(join(dataDir, 'keys'), { recursive: true, mode: 0o700 })
    writeFileSync(secret, privateKey.export({ type: 'pkcs8', format: 'pem' }), { mode: 0o600, flag: 'wx' })
    writeFileSync(open, publicKey.export({ type: 'spki', format: 'pem' }), { mode: 0o644 })
  }
  return createPrivateKey(readFileSync(secret))
}

/** Signs a JSON value with the data folder's key. */
export function signJson<T>(dataDir: string, payload: T): Signed<T> {
  const key = signingKey(dataDir)
  return {
    payload,
    publicKey: String(createPublicKey(key).export({ type: 'spki', format: 'pem' })),
    signature: sign(null, Buffer.from(canonicalJson(payload)), key).toString('base64'),
  }
}

/** Whether the signature is the named key's over this payload. Whose key it is, {@link fingerprint} tells. */
export function isSigned({ payload, publicKey, signature }: Signed<unknown>): boolean {
  try {
    const key = createPublicKey(publicKey)
    return verify(null, Buffer.from(canonicalJson(payload)), key, Buffer.from(signature, 'base64'))
  } catch {
    return false
  }
}

/** The first 32 hexadecimal digits of the SHA-256 of a public key: short enough to write down. */
export const fingerprint = (publicKey: string): string =>
  createHash('sha256')
    .update(createPublicKey(publicKey).export({ type: 'spki', format: 'der' }))
    .digest('hex')
    .slice(0, 32)

/** Fingerprint of the data folder's own key; null before it has one. */
export function ownFingerprint(dataDir: string): string | null {
  const { open } = files(dataDir)
  return existsSync(open) ? fingerprint(readFileSync(open, 'utf8')) : null
}
