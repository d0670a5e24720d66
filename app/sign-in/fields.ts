import type { FormField } from '../_ui/action-form.tsx'
import { words } from '../_words/index.ts'

const t = words('account')

const EMAIL: FormField = {
  name: 'email',
  get label() {
    return t('field.email')
  },
  kind: 'email',
  autoComplete: 'username',
  required: true,
}
export const NAME: FormField = {
  name: 'name',
  get label() {
    return t('field.name')
  },
  get hint() {
    return t('hint.name')
  },
  kind: 'text',
  autoComplete: 'nickname',
  required: true,
  maxLength: 60,
}
/** A password that is chosen now. */
export const NEW_PASSWORD: FormField = {
  name: 'password',
  get label() {
    return t('field.password')
  },
  get hint() {
    return t('hint.password')
  },
  kind: 'password',
  autoComplete: 'new-password',
  required: true,
}

/** What a link by mail asks. */
export const linkFields = (): readonly FormField[] => [{ ...EMAIL, autoComplete: 'email' }]

/** What signing in asks. */
export const passwordFields = (): readonly FormField[] => [
  EMAIL,
  {
    name: 'password',
    label: t('field.password'),
    kind: 'password',
    autoComplete: 'current-password',
    required: true,
  },
]

/** What opening an account asks. */
export const newPersonFields = (): readonly FormField[] => [NAME, EMAIL, NEW_PASSWORD]
