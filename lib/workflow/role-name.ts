import { z } from 'zod'
import { type Actor, ROLES, type Role } from '#lib/access/actor.ts'
import { must } from '#lib/access/policy.ts'
import { recordAct } from '#lib/db/audit.ts'
import { type Db, db } from '#lib/db/client.ts'
import { Refusal } from '#lib/errors.ts'
import { parse } from './parse.ts'

const naming = z.strictObject({
  /** Author key of the person. */
  person: z.string().max(80),
  /** All roles that they are to have from now on. */
  roles: z.array(z.enum(ROLES)).max(ROLES.length),
})
export type Naming = z.infer<typeof naming>

/**
 * Gives a person these roles and no others. Takes effect with their next request.
 *
 * @throws Refusal `forbidden`; `not-found` for a key that nobody has; `conflict` when no steward would be left
 */
export async function nameRoles(actor: Actor, given: Naming): Promise<readonly Role[]> {
  const steward = must(actor, 'nameRoles', undefined)
  const { person, roles } = parse(naming, given)
  return db().$transaction(async (tx) => {
    await holdStewards(tx)
    const account = await tx.account.findFirst({
      where: { key: person, closedAt: null },
      select: { id: true, grants: { select: { role: true } } },
    })
    if (account === null) throw new Refusal('not-found', 'There is no such person.')
    const before: Role[] = account.grants.map(({ role }) => role)
    const [added, taken] = [missingFrom(before, roles), missingFrom(roles, before)]
    if (taken.includes('steward')) await refuseLastSteward(tx, account.id)
    await tx.roleGrant.deleteMany({ where: { accountId: account.id, role: { in: taken } } })
    const at = new Date()
    await tx.roleGrant.createMany({
      data: added.map((role) => ({ accountId: account.id, role, grantedBy: steward.key, at })),
    })
    // What a reviewer had in hand is anybody's again.
    if (taken.includes('reviewer')) await tx.claim.deleteMany({ where: { reviewerKey: person } })
    for (const role of added) await recordAct(tx, actor, 'name-role', person, { role })
    for (const role of taken) await recordAct(tx, actor, 'take-role', person, { role })
    return ROLES.filter((role) => roles.includes(role))
  })
}

const missingFrom = (all: readonly Role[], wanted: readonly Role[]) =>
  wanted.filter((role) => !all.includes(role))

/** Makes somebody who is signed in the first steward. */
export async function grantFirstSteward(
  tx: Db,
  { accountId, key }: { readonly accountId: string; readonly key: string },
): Promise<void> {
  await holdStewards(tx)
  await tx.roleGrant.create({ data: { accountId, role: 'steward', grantedBy: key, at: new Date() } })
  await recordAct(tx, { kind: 'member', key, roles: [] }, 'name-role', key, { role: 'steward' })
}

/**
 * Keeps a site from being left without a steward.
 *
 * @throws Refusal `conflict`
 */
export async function refuseLastSteward(tx: Db, accountId: string): Promise<void> {
  const others = await tx.roleGrant.count({
    where: { role: 'steward', accountId: { not: accountId }, account: { closedAt: null } },
  })
  if (others === 0)
    throw new Refusal('conflict', 'This is the only steward. Name another one first.', [
      { field: 'roles', code: 'last-steward' },
    ])
}

/** Stewards come and go one at a time: two of the last two could otherwise leave at once. */
export async function holdStewards(tx: Db): Promise<void> {
  await tx.$executeRaw`SELECT pg_advisory_xact_lock(7310418::bigint)`
}
