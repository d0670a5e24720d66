import kept from '../_words/en/kept.json'
import { words } from '../_words/index.ts'

type Label = keyof typeof kept.field

/** What the forms of kept sheets call a field. */
export const keptLabel = (name: string): string =>
  Object.hasOwn(kept.field, name) ? words('kept')(`field.${name as Label}`) : name
