import { GROUNDS } from '#lib/entry/erased.ts'
import type { FormField } from '../../_ui/action-form.tsx'
import { words } from '../../_words/index.ts'

const t = words('account')

export const SLUG: FormField = {
  name: 'slug',
  get label() {
    return t('field.slug')
  },
  get hint() {
    return t('hint.slug')
  },
  kind: 'text',
  required: true,
  maxLength: 80,
}
export const NUMBER: FormField = {
  name: 'number',
  get label() {
    return t('field.number')
  },
  kind: 'text',
  required: true,
  maxLength: 6,
}
export const GROUND: FormField = {
  name: 'ground',
  get label() {
    return t('field.ground')
  },
  kind: 'choice',
  get options() {
    return GROUNDS.map((ground) => ({ value: ground, label: words('steward')(`ground.${ground}`) }))
  },
}
export const WORDS: FormField = {
  name: 'words',
  get label() {
    return t('field.words')
  },
  get hint() {
    return t('hint.words')
  },
  kind: 'long',
  required: true,
  maxLength: 2000,
}
export const SHA256: FormField = {
  name: 'sha256',
  get label() {
    return t('field.sha256')
  },
  kind: 'text',
  required: true,
  maxLength: 64,
}
