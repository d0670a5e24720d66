'use server'

import { z } from 'zod'
import { slug, text } from '#lib/entry/fields.ts'
import { answerVisit as answer, strike as strikeWords } from '#lib/workflow/answer.ts'
import { dispute as objectTo } from '#lib/workflow/dispute.ts'
import { act } from '../_http/action.ts'
import { anew } from '../_http/anew.ts'
import { versionsPath } from '../_versions/address.ts'
import { reviewLabel } from '../_versions/labels.ts'

/** Says that a published entry is wrong. */
export const disputeEntry = act('disputeEntry', {
  schema: z.strictObject({ key: z.uuid(), slug, words: text(2000) }),
  label: reviewLabel,
  run: async (actor, given) => {
    await objectTo(actor, given)
    anew(versionsPath(given.slug))
  },
})

/** The author of a case answers beside a visit. */
export const answerVisit = act('answerVisit', {
  schema: z.strictObject({ key: z.uuid(), slug, words: text(1200) }),
  label: reviewLabel,
  run: async (actor, given) => {
    await answer(actor, given)
    anew(versionsPath(given.slug))
  },
})

/** A steward takes words off the page. */
export const strike = act('strike', {
  schema: z.strictObject({ key: z.uuid(), slug, deed: z.coerce.number().int().positive(), words: text(600) }),
  label: reviewLabel,
  run: async (actor, given) => {
    await strikeWords(actor, given)
    anew(versionsPath(given.slug))
  },
})
