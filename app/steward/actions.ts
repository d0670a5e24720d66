'use server'

import { z } from 'zod'
import { ROLES } from '#lib/access/actor.ts'
import { GROUNDS } from '#lib/entry/erased.ts'
import { eraseBody as erase, erasePhoto as removePhoto } from '#lib/workflow/erase.ts'
import { nameRoles as name } from '#lib/workflow/role-name.ts'
import { restore, withdraw } from '#lib/workflow/withdraw.ts'
import { act } from '../_http/action.ts'
import { words } from '../_words/index.ts'
import { fieldLabel } from '../sign-in/labels.ts'

const some = z.string()
const lawful = { ground: z.enum(GROUNDS), words: some }

/** Gives a person these roles and no others. */
export const nameRoles = act('nameRoles', {
  schema: z.strictObject({
    person: some,
    roles: z.union([z.array(z.enum(ROLES)), z.enum(ROLES).transform((role) => [role])]).default([]),
  }),
  label: fieldLabel,
  run: async (actor, given) => {
    const roles = await name(actor, given)
    return words('steward')('person.saved', { count: roles.length })
  },
})

/** Takes an entry down. */
export const withdrawEntry = act('withdrawEntry', {
  schema: z.strictObject({ key: some, slug: some, words: some }),
  label: fieldLabel,
  run: async (actor, given) => {
    const { slug, revision } = await withdraw(actor, given)
    return words('steward')('takeDown.withdrawn', { slug, number: revision })
  },
})

/** Puts an entry back that was taken down. */
export const restoreEntry = act('restoreEntry', {
  schema: z.strictObject({ key: some, slug: some, words: some }),
  label: fieldLabel,
  run: async (actor, given) => {
    const { slug, revision } = await restore(actor, given)
    return words('steward')('takeDown.restored', { slug, number: revision })
  },
})

/** Erases the text of a revision for a lawful reason. */
export const eraseBody = act('eraseBody', {
  schema: z.strictObject({
    key: some,
    slug: some,
    number: z
      .string()
      .regex(/^[1-9]\d{0,5}$/, 'not-a-number')
      .transform(Number),
    ...lawful,
  }),
  label: fieldLabel,
  run: async (actor, given) => {
    const { slug, revision } = await erase(actor, given)
    return words('steward')('takeDown.erased', { slug, number: revision })
  },
})

/** Erases a photo for a lawful reason. */
export const erasePhoto = act('erasePhoto', {
  schema: z.strictObject({ sha256: some, ...lawful }),
  label: fieldLabel,
  run: async (actor, given) => {
    await removePhoto(actor, given)
    return words('steward')('takeDown.photoErased')
  },
})
