import { createHash, createHmac, randomBytes } from 'node:crypto'
import { authSecret } from './secret.ts'

/** 256 random bits as 43 characters that an address can hold. */
export const makeSecret = (): string => randomBytes(32).toString('base64url')

/** A new author key: random, so that it tells nothing of who it stands for. */
export const makeAuthorKey = (): string => `p-${randomBytes(12).toString('hex')}`

/** What is stored of a secret that somebody else carries. */
export const secretDigest = (secret: string): string => createHash('sha256').update(secret).digest('hex')

/** A name under which tries are counted, which tells nothing of what it was made from. */
export const bucketName = (what: string, of: string): string =>
  `${what}:${createHmac('sha256', authSecret()).update(of).digest('base64url').slice(0, 32)}`
