'use server'

import { z } from 'zod'
import { redeemLink as redeem } from '#lib/auth/links.ts'
import { sendSignInLink } from '#lib/auth/send-link.ts'
import { emailField, signInWithPassword } from '#lib/auth/sign-in.ts'
import { nameField, signUp as openAccount, passwordField } from '#lib/auth/sign-up.ts'
import { Refusal } from '#lib/errors.ts'
import { sendsMail } from '#lib/mail/send-mail.ts'
import { act } from '../_http/action.ts'
import { carrySession, currentSession, pathWithin, requestFrom } from '../_http/actor.ts'
import { redirect } from '../_http/redirect.ts'
import { words } from '../_words/index.ts'
import { linkInLanguage } from '../_words/language.ts'
import { fieldLabel } from './labels.ts'

const to = z.string().optional()

/** Signs in with a password. */
export const signIn = act('signIn', {
  schema: z.strictObject({ email: emailField, password: passwordField, to }),
  label: fieldLabel,
  run: async (_, { to, ...given }) => {
    await carrySession(await signInWithPassword(given, await requestFrom()))
    redirect(pathWithin(to))
  },
})

/** Sends a link to sign in with, or to open an account with. */
export const sendLink = act('sendLink', {
  schema: z.strictObject({ email: emailField }),
  label: fieldLabel,
  run: async (_, { email }) => {
    const t = words('account')
    await sendSignInLink(email, await requestFrom(), (link) => ({
      subject: t('mail.signIn.subject'),
      text: t('mail.signIn.text', { link: linkInLanguage(link) }),
    }))
    return t('signIn.linkSent', { email })
  },
})

/** Opens an account with a password, where the site sends no mail. */
export const signUp = act('signUp', {
  schema: z.strictObject({ name: nameField, email: emailField, password: passwordField, to }),
  label: fieldLabel,
  run: async (_, { to, ...given }) => {
    if (sendsMail()) throw new Refusal('forbidden', words('account')('signUp.byMail'))
    await carrySession(await openAccount(given, await requestFrom()))
    redirect(pathWithin(to))
  },
})

/** Uses a one-time link. */
export const redeemLink = act('redeemLink', {
  schema: z.strictObject({
    secret: z.string().max(100),
    name: nameField.optional(),
    email: emailField.optional(),
    password: passwordField.optional(),
  }),
  label: fieldLabel,
  run: async (_, { secret, ...answers }) => {
    const sid = await redeem(secret, answers, await currentSession(), await requestFrom())
    if (sid !== null) await carrySession(sid)
    redirect('/account')
  },
})
