import { GROUNDS } from '#lib/entry/erased.ts'
import type { FormField } from '../../_ui/action-form.tsx'
import { words } from '../../_words/index.ts'

const t = words('account')

export const SLUG: FormField = {
  name: 'slug',
  label: t('field.slug'),
  hint: t('hint.slug'),
  kind: 'text',
  required: true,
  maxLength: 80,
}
export const NUMBER: FormField = {
  name: 'number',
  label: t('field.number'),
  kind: 'text',
  required: true,
  maxLength: 6,
}
export const GROUND: FormField = {
  name: 'ground',
  label: t('field.ground'),
  kind: 'choice',
  options: GROUNDS.map((ground) => ({ value: ground, label: words('steward')(`ground.${ground}`) })),
}
export const WORDS: FormField = {
  name: 'words',
  label: t('field.words'),
  hint: t('hint.words'),
  kind: 'long',
  required: true,
  maxLength: 2000,
}
export const SHA256: FormField = {
  name: 'sha256',
  label: t('field.sha256'),
  kind: 'text',
  required: true,
  maxLength: 64,
}
