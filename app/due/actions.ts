'use server'

import { z } from 'zod'
import { day, slug } from '#lib/entry/fields.ts'
import {
  addReminder as add,
  makeCalendar as make,
  REMIND_YEARS,
  readNotices as read,
  removeReminder as remove,
} from '#lib/workflow/remind.ts'
import { act } from '../_http/action.ts'
import { anew } from '../_http/anew.ts'
import { addressWith } from '../_ui/query.ts'
import { reviewLabel } from '../_versions/labels.ts'

/** Asks to be reminded of a visit. */
export const addReminder = act('addReminder', {
  schema: z.strictObject({
    caseSlug: slug,
    work: slug,
    when: z.enum([...REMIND_YEARS, 'date']),
    on: day.optional(),
  }),
  label: reviewLabel,
  run: async (actor, given) => {
    await add(actor, given)
    anew('/due')
  },
})

/** Takes a reminder out. */
export const removeReminder = act('removeReminder', {
  schema: z.strictObject({ id: z.uuid() }),
  label: reviewLabel,
  run: async (actor, given) => {
    await remove(actor, given)
    anew(addressWith('/due', { removed: given.id }))
  },
})

/** Gives one's calendar a new secret address. */
export const makeCalendar = act('makeCalendar', {
  schema: z.strictObject({}),
  label: reviewLabel,
  run: async (actor) => {
    await make(actor)
    anew('/due')
  },
})

/** Marks all notices as read. */
export const readNotices = act('readNotices', {
  schema: z.strictObject({}),
  label: reviewLabel,
  run: async (actor) => {
    await read(actor)
    anew('/notices')
  },
})
