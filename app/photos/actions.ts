'use server'

import { z } from 'zod'
import { removePhoto as remove } from '#lib/workflow/photo-remove.ts'
import { act } from '../_http/action.ts'
import { anew } from '../_http/anew.ts'
import { addressWith } from '../_ui/query.ts'
import { words } from '../_words/index.ts'

/** Deletes a photo of one's own that nothing shows. */
export const removePhoto = act('removePhoto', {
  schema: z.strictObject({ sha256: z.string().regex(/^[0-9a-f]{64}$/) }),
  label: (field) => (field === 'sha256' ? words('photos')('label.sha256') : field),
  run: async (actor, { sha256 }) => {
    const { uploadedAt } = await remove(actor, sha256)
    const deleted = `${uploadedAt.toISOString().slice(0, 10)}_${sha256.slice(0, 12)}`
    anew(addressWith('/photos', { deleted }))
  },
})
