import account from '../_words/en/account.json'
import { words } from '../_words/index.ts'

type Label = keyof typeof account.field

/** What the forms of an account call a field. */
export const fieldLabel = (name: string): string =>
  Object.hasOwn(account.field, name) ? words('account')(`field.${name as Label}`) : name
