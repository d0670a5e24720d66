import type { Db } from '#lib/db/client.ts'

/**
 * What a one-time link is for: to sign in with (or to open an account with) an address, to confirm the address of
 * an account, or to make the first steward.
 */
export const LINK_PURPOSES = ['sign-in', 'confirm-address', 'first-steward'] as const
export type LinkPurpose = (typeof LINK_PURPOSES)[number]

export interface Link {
  readonly purpose: LinkPurpose
  readonly email: string | null
  readonly accountId: string | null
}

/** Keeps a link by the digest of what it carries, for so many seconds. */
export async function keepLink(tx: Db, digest: string, link: Link, seconds: number): Promise<void> {
  // Of the same kind for the same person the newest is the only one. Anybody may ask for links to an address, though:
  // those leave one another alone, so that nobody's is put out before they open it.
  if (link.purpose !== 'sign-in') await tx.token.deleteMany({ where: { ...link } })
  await tx.token.create({ data: { digest, ...link, expiresAt: new Date(Date.now() + seconds * 1000) } })
}

/** What a link is for while it can be used; null when it was used, ran out or never was. */
export async function readLink(tx: Db, digest: string): Promise<Link | null> {
  const found = await tx.token.findFirst({
    where: { digest, expiresAt: { gt: new Date() } },
    select: { purpose: true, email: true, accountId: true },
  })
  return found && { ...found, purpose: found.purpose as LinkPurpose }
}

/** Uses a link up: of several that come at once, one is answered true. */
export async function takeLink(tx: Db, digest: string): Promise<boolean> {
  const { count } = await tx.token.deleteMany({ where: { digest, expiresAt: { gt: new Date() } } })
  return count === 1
}

/** Ends all open links of an account, and those to sign in with its address. */
export async function dropLinks(tx: Db, accountId: string, email: string | null): Promise<void> {
  await tx.token.deleteMany({ where: { OR: [{ accountId }, ...(email === null ? [] : [{ email }])] } })
}

/** Whoever signs in with one link to an address needs the others no more. */
export const dropSignInLinks = (tx: Db, email: string) =>
  tx.token.deleteMany({ where: { purpose: 'sign-in', email } })
