'use server'

import { z } from 'zod'
import { Refusal } from '#lib/errors.ts'
import {
  deleteSheet as remove,
  renameSheet as rename,
  keepSheet as save,
  sheetName,
  sheetNote,
} from '#lib/workflow/sheet-keep.ts'
import { act } from '../../_http/action.ts'
import { anew } from '../../_http/anew.ts'
import { keptLabel } from '../../_kept/labels.ts'
import { partsOf, workSheet } from '../../_kept/worked-sheet.ts'
import { words } from '../../_words/index.ts'

const t = words('kept')

const told = { id: z.uuid(), name: sheetName, note: sheetNote.default('') }

/**
 * Keeps a sheet. It is worked out here, never taken from what a browser sends; where other figures come out than the
 * page showed, its owner looks at them first.
 */
export const keepSheet = act('keepSheet', {
  schema: z.strictObject({ ...told, of: z.string().max(6000) }),
  label: keptLabel,
  run: async (actor, { id, name, note, of }) => {
    const working = await workSheet(of)
    if (working === null) throw new Refusal('invalid', t('new.none'))
    if (!working.ok) throw new Refusal('invalid', working.sentences.join(' '))
    const { calculation, address, system, versions, recipe, figures } = working.sheet
    if (partsOf(of)?.typed.is !== versions.digest) throw new Refusal('conflict', t('new.changed'))
    await save(actor, {
      id,
      name,
      note,
      calculation,
      address,
      system,
      recipe,
      figures,
      ...versionsOf(versions),
    })
    anew(`/account/sheets/${id}`)
  },
})

const versionsOf = ({ edition, sums, digest }: { edition: string; sums: number; digest: string }) => ({
  edition,
  sums,
  digest,
})

/** Gives a kept sheet another name and note. */
export const renameSheet = act('renameSheet', {
  schema: z.strictObject(told),
  label: keptLabel,
  run: async (actor, given) => {
    await rename(actor, given)
    return t('change.done')
  },
})

/** Deletes a kept sheet. */
export const deleteSheet = act('deleteSheet', {
  schema: z.strictObject({ id: z.uuid(), sure: z.literal('yes') }),
  label: keptLabel,
  run: async (actor, { id }) => {
    await remove(actor, { id })
    anew('/account/sheets')
  },
})
