import { recordAct } from '#lib/db/audit.ts'
import type { Db } from '#lib/db/client.ts'

/** From now on this account of another service signs in to this one of ours. */
export async function linkIdentity(
  tx: Db,
  { id, key }: { readonly id: string; readonly key: string },
  { issuer, subject }: { readonly issuer: string; readonly subject: string },
): Promise<void> {
  await tx.identity.create({ data: { issuer, subject, accountId: id, at: new Date() } })
  await recordAct(tx, { kind: 'member', key, roles: [] }, 'link-service', key)
}
