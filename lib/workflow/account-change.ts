import type { Member } from '#lib/access/actor.ts'
import { recordAct } from '#lib/db/audit.ts'
import { type Db, db } from '#lib/db/client.ts'
import { deleteSessions } from '#lib/db/sessions.ts'
import type { Language } from '#lib/entry/languages.ts'
import { dropLinks } from './account-link.ts'

/** The account that somebody changes as its owner. */
export interface OwnAccount {
  readonly actor: Member
  readonly accountId: string
}

/** Chooses another name to stand beside what one writes, also beside what one wrote before. */
export async function renameAccount({ actor, accountId }: OwnAccount, name: string): Promise<void> {
  await db().$transaction(async (tx) => {
    await tx.account.update({ where: { id: accountId }, data: { name } })
    await recordAct(tx, actor, 'rename-account', actor.key)
  })
}

/** Chooses the language of one's mail and calendar. */
export async function setLanguage({ actor, accountId }: OwnAccount, language: Language): Promise<void> {
  await db().$transaction(async (tx) => {
    await tx.account.update({ where: { id: accountId }, data: { language } })
    await recordAct(tx, actor, 'set-language', actor.key, { language })
  })
}

/** Sets a password: ends every session of the account at once, and every link that would let somebody in to it. */
export async function setPasswordIn(
  tx: Db,
  { actor, accountId }: OwnAccount,
  passwordHash: string,
): Promise<void> {
  const { email } = await tx.account.update({
    where: { id: accountId },
    data: { passwordHash },
    select: { email: true },
  })
  const ended = await deleteSessions(tx, accountId)
  await dropLinks(tx, accountId, email)
  await recordAct(tx, actor, 'set-password', actor.key, { ended })
}
