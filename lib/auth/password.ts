import { hash, verify } from '@node-rs/argon2'

/** Fewest and most characters. Length is what makes a password hard to guess; no kind of character is asked for. */
export const SHORTEST = 12
export const LONGEST = 256

/** argon2id as OWASP's Password Storage Cheat Sheet has it: 19 MiB, two passes, one lane. */
const COST = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const

/** Hash of a random value that nobody knows: what an unknown address is held against, so that it takes as long. */
const NOBODY =
  '$argon2id$v=19$m=19456,t=2,p=1$c2l4dGVlbiBieXRlcyEhIQ$8zDq0Yl3kGzCFq4mQ5g1nYq7f6sUe9iX3bWcV2dTtRw'

/** What a password is stored as. */
export const hashPassword = (password: string): Promise<string> => hash(folded(password), COST)

/** Whether the password is the one; it takes as long when there is none. */
export async function fitsPassword(stored: string | null, password: string): Promise<boolean> {
  const fits = await verify(stored ?? NOBODY, folded(password).slice(0, LONGEST * 2))
  return stored !== null && fits
}

/** The same letters whichever way a keyboard composes them. */
const folded = (password: string) => password.normalize('NFKC')

/** Why a password will not do: `password-short`, `password-long`, `password-known` (many people use it), `password-own`
 * (their name or address is most of it); null when it will. */
export async function passwordFault(
  password: string,
  own: readonly string[],
): Promise<'password-short' | 'password-long' | 'password-known' | 'password-own' | null> {
  const length = [...password].length
  if (length < SHORTEST) return 'password-short'
  if (length > LONGEST) return 'password-long'
  const plain = folded(password).toLowerCase()
  const rest = own
    .flatMap((word) => word.toLowerCase().split(/[\s@.]+/))
    .filter((word) => word.length > 3)
    .reduce((left, word) => left.replaceAll(word, ''), plain)
    .replace(/[^\p{L}\p{N}]/gu, '')
  if (rest.length < 6) return 'password-own'
  const known = await knownPasswords()
  return isKnown(plain, known) ? 'password-known' : null
}

/** One that many people use, alone, repeated, or with digits and marks after it; or one made of a few characters. */
function isKnown(plain: string, known: ReadonlySet<string>): boolean {
  const unit = /^(.+?)\1+$/.exec(plain)?.[1]
  const stem = plain.replace(/[\d\W_]+$/, '')
  return (
    known.has(plain) ||
    (unit !== undefined && (unit.length < 6 || known.has(unit))) ||
    known.has(stem) ||
    new Set(plain).size < 5
  )
}

let read: Promise<ReadonlySet<string>> | undefined

/** The passwords found most often in breaches, from a bundled list; read at first use. */
function knownPasswords(): Promise<ReadonlySet<string>> {
  read ??= import('@zxcvbn-ts/language-common').then(
    ({ dictionary }) => new Set(dictionary['passwords-common'].map((word) => word.toLowerCase())),
  )
  return read
}
