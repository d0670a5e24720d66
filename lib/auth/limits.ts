import { countTry, forgetTries, triesSoFar } from '#lib/db/limits.ts'
import { Refusal } from '#lib/errors.ts'
import { bucketName } from './random.ts'

/** What may be tried how often, in how many seconds. */
const LIMITS = {
  /** Passwords from one network address, for any account. */
  'sign-in-from': { most: 40, seconds: 900 },
  /** Passwords for one account from one address. */
  'sign-in-pair': { most: 8, seconds: 900 },
  /** Passwords for one account from all strangers' browsers together: above it, the next one holds for each. */
  'sign-in-crowd': { most: 100, seconds: 3600 },
  /** Passwords for an account that many guess at, from one address: its owner still gets in with a new browser. */
  'sign-in-pressed': { most: 2, seconds: 3600 },
  /** Passwords for one account from one browser that its owner has signed in with. */
  'sign-in-device': { most: 15, seconds: 900 },
  /** Passwords of somebody who is signed in, before what cannot be undone. */
  prove: { most: 10, seconds: 900 },
  'sign-up-from': { most: 20, seconds: 3600 },
  /** Addresses that one network address, or one account, was told to be taken. */
  'taken-to': { most: 3, seconds: 86_400 },
  'link-from': { most: 20, seconds: 3600 },
  'link-to': { most: 5, seconds: 3600 },
  /** Links from a browser that the owner of the address has signed in with, or for an account's own wish. */
  'link-own': { most: 5, seconds: 3600 },
} as const
export type Limit = keyof typeof LIMITS

/**
 * Counts a try against a limit.
 *
 * @param of whom it is counted for; only a keyed digest of it is stored
 * @throws Refusal `too-many` once there were more than the limit allows
 */
export async function countAgainst(limit: Limit, of: string): Promise<void> {
  if (await isBeyond(limit, of)) throw tooMany(limit)
}

/** Counts a try and answers whether there were more than the limit allows. */
export async function isBeyond(limit: Limit, of: string): Promise<boolean> {
  const { most, seconds } = LIMITS[limit]
  return (await countTry(bucketName(limit, of), seconds)) > most
}

/** Refuses what is used up already, without counting this. @throws Refusal `too-many` */
export async function refuseBeyond(limit: Limit, of: string): Promise<void> {
  if ((await triesSoFar(bucketName(limit, of))) >= LIMITS[limit].most) throw tooMany(limit)
}

function tooMany(limit: Limit): Refusal {
  const minutes = LIMITS[limit].seconds / 60
  const wait = minutes > 120 ? `${minutes / 60} hours` : `${minutes} minutes`
  return new Refusal('too-many', `Too many tries. Wait ${wait} and try again.`)
}

/** Begins to count from none again: the right person came. */
export const forgetAgainst = (limits: readonly (readonly [limit: Limit, of: string])[]): Promise<void> =>
  forgetTries(limits.map(([limit, of]) => bucketName(limit, of)))

/**
 * The network address that asks, as the limits count it: of an IPv6 address its first half, which is one household.
 *
 * @param chain the header `x-forwarded-for`: what the client claims, then what each of our proxies adds, and last the
 *   address that the server was asked from, which lib/cli/peer-address.mjs adds
 * @param hops how many of the proxies are ours; what stands before theirs is only claimed
 */
export function addressOf(chain: string | null, hops: number): string {
  const stops = (chain ?? '').split(',').map((stop) => stop.trim())
  // Fewer stops than proxies: somebody came past them, and is known by nothing but the last.
  const address = (stops.at(-1 - hops) ?? stops.at(-1) ?? '').replace(/^::ffff:(?=[\d.]+$)/i, '')
  if (!address.includes(':')) return address
  const [front = '', back = ''] = address.split('::')
  const groups = front.split(':').filter((group) => group !== '')
  const missing = address.includes('::') ? 8 - groups.length - back.split(':').filter(Boolean).length : 0
  return [...groups, ...Array<string>(Math.max(0, missing)).fill('0'), ...back.split(':')]
    .slice(0, 4)
    .join(':')
}
