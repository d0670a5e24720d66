'use server'

import { z } from 'zod'
import { entryHead } from '#lib/db/versions.ts'
import { CHECKLISTS, CHECKS } from '#lib/entry/checklists.ts'
import { slug, text } from '#lib/entry/fields.ts'
import { Refusal } from '#lib/errors.ts'
import { claim, release } from '#lib/workflow/claim.ts'
import { decide } from '#lib/workflow/decide.ts'
import { answerDispute } from '#lib/workflow/dispute.ts'
import { act } from '../_http/action.ts'
import { anew } from '../_http/anew.ts'
import { reviewLabel } from '../_versions/labels.ts'
import { words } from '../_words/index.ts'

const oneOrMore = <T extends z.ZodType>(item: T) =>
  z.union([z.array(item), item.transform((one) => [one])]).optional()

const verdict = z
  .object({
    key: z.uuid(),
    slug,
    number: z.coerce.number().int().positive(),
    outcome: z.enum(['publish', 'return', 'decline']),
    checks: oneOrMore(z.enum(CHECKS)),
    words: text(2000),
  })
  // Words on single fields come under their paths: on:works[repointing].title.
  .catchall(text(600))

/** A reviewer's verdict. Publishing asks for every point of the checklist. */
export const judge = act('judge', {
  schema: verdict,
  label: reviewLabel,
  run: async (actor, { key, slug, number, outcome, checks = [], words: said, ...rest }) => {
    const looked = checks as readonly string[]
    const entry = await entryHead(actor, slug)
    const asked = entry === null ? [] : CHECKLISTS[entry.kind]
    if (outcome === 'publish' && asked.some((check) => !looked.includes(check)))
      throw new Refusal('invalid', words('review')('judge.unchecked'), [
        { field: 'checks', code: 'unchecked' },
      ])
    await decide(actor, {
      ...{ key, slug, number, outcome, words: said },
      checklist: Object.fromEntries(asked.map((check) => [check, looked.includes(check)])),
      fields: Object.entries(rest).flatMap(([name, value]) =>
        name.startsWith('on:') ? [{ field: name.slice(3), words: String(value) }] : [],
      ),
    })
    anew('/review')
  },
})

const held = z.strictObject({ revisionId: z.uuid() })

/** Takes a revision in hand. */
export const claimRevision = act('claimRevision', {
  schema: held,
  label: reviewLabel,
  run: async (actor, given) => {
    await claim(actor, given)
    anew(`/review/${given.revisionId}`)
  },
})

/** Puts it back. */
export const releaseRevision = act('releaseRevision', {
  schema: held,
  label: reviewLabel,
  run: async (actor, given) => {
    await release(actor, given)
    anew('/review')
  },
})

/** A reviewer's answer to the disputes of an entry. */
export const ruleOnDispute = act('ruleOnDispute', {
  schema: z.strictObject({
    key: z.uuid(),
    slug,
    outcome: z.enum(['settle', 'uphold']),
    words: text(2000),
    read: z.coerce.number().int().positive(),
  }),
  label: reviewLabel,
  run: async (actor, given) => {
    await answerDispute(actor, given)
    anew('/review')
  },
})
