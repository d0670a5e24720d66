import type { FormField } from '../_ui/action-form.tsx'
import { words } from '../_words/index.ts'

const t = words('kept')

/** What may be said of a kept sheet. */
export const sheetFields = (given: { name: string; note: string }): readonly FormField[] => [
  {
    name: 'name',
    label: t('field.name'),
    hint: t('hint.name'),
    kind: 'text',
    required: true,
    maxLength: 120,
    value: given.name,
  },
  {
    name: 'note',
    label: t('field.note'),
    hint: t('hint.note'),
    kind: 'long',
    maxLength: 2000,
    value: given.note,
  },
]
