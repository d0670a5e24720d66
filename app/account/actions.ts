'use server'

import { z } from 'zod'
import { changeOwnAddress, changeOwnPassword } from '#lib/auth/own-account.ts'
import { prove } from '#lib/auth/prove.ts'
import { sendConfirmLink } from '#lib/auth/send-link.ts'
import { emailField } from '#lib/auth/sign-in.ts'
import { nameField, passwordField } from '#lib/auth/sign-up.ts'
import { sendsMail } from '#lib/mail/send-mail.ts'
import { setLanguage as chooseLanguage, renameAccount } from '#lib/workflow/account-change.ts'
import { closeAccount as close } from '#lib/workflow/account-close.ts'
import { endSessions as end } from '#lib/workflow/session-end.ts'
import { act } from '../_http/action.ts'
import { carrySession, dropSession, ownAccount, requestFrom } from '../_http/actor.ts'
import { anew } from '../_http/anew.ts'
import { addressWith } from '../_ui/query.ts'
import { words } from '../_words/index.ts'
import { linkInLanguage } from '../_words/language.ts'
import { LANGUAGES, OWN_NAMES } from '../_words/languages.ts'
import { fieldLabel } from '../sign-in/labels.ts'

const current = { 'current-password': passwordField.optional() }

/** Chooses the name that stands beside one's work. */
export const rename = act('rename', {
  schema: z.strictObject({ name: nameField }),
  label: fieldLabel,
  run: async (_, { name }) => {
    const { own } = await ownAccount()
    await renameAccount(own, name)
    return words('account')('account.renamed', { name })
  },
})

/** Chooses the language of one's mail and calendar. */
export const setLanguage = act('setLanguage', {
  schema: z.strictObject({ language: z.enum(LANGUAGES) }),
  label: fieldLabel,
  run: async (_, { language }) => {
    const { own } = await ownAccount()
    await chooseLanguage(own, language)
    return words('account')('account.languageSet', { language: OWN_NAMES[language] })
  },
})

/** Changes or confirms the address: by a link where the site sends mail, at once where it does not. */
export const setAddress = act('setAddress', {
  schema: z.strictObject({ email: emailField, ...current }),
  label: fieldLabel,
  run: async (_, { email, 'current-password': password }) => {
    const t = words('account')
    const { session } = await ownAccount()
    await prove(session, password)
    if (!sendsMail()) {
      await changeOwnAddress(session, email)
      return t('account.addressChanged', { email })
    }
    await sendConfirmLink(session, email, await requestFrom(), (link) => ({
      subject: t('mail.confirm.subject'),
      text: t('mail.confirm.text', { link: linkInLanguage(link) }),
    }))
    return t('account.confirmSent', { email })
  },
})

/** Sets a password; every other browser is signed out, and this one carries a new session. */
export const setPassword = act('setPassword', {
  schema: z.strictObject({ password: passwordField, ...current }),
  label: fieldLabel,
  run: async (_, { password, 'current-password': before }) => {
    const { session, own } = await ownAccount()
    await prove(session, before)
    await carrySession(await changeOwnPassword(own, session, password, await requestFrom()))
    return words('account')('account.passwordSet')
  },
})

/** Ends one session, or all but this one. */
export const endSessions = act('endSessions', {
  schema: z.strictObject({ session: z.union([z.uuid(), z.literal('others')]) }),
  label: fieldLabel,
  run: async (_, given) => {
    const { session, own } = await ownAccount()
    const which = given.session === 'others' ? { but: session.sessionId } : { only: given.session }
    await end(own.actor, own.accountId, which)
    anew(addressWith('/account', { ended: given.session }))
  },
})

/** Signs out here. */
export const signOut = act('signOut', {
  schema: z.strictObject({}),
  label: fieldLabel,
  run: async () => {
    const { session, own } = await ownAccount()
    await end(own.actor, own.accountId, { only: session.sessionId })
    await dropSession()
    anew('/')
  },
})

/** Closes the account for good. */
export const closeAccount = act('closeAccount', {
  schema: z.strictObject({ ...current, sure: z.literal('yes') }),
  label: fieldLabel,
  run: async (_, given) => {
    const { session, own } = await ownAccount()
    await prove(session, given['current-password'])
    await close(own)
    await dropSession()
    anew('/account/closed')
  },
})
