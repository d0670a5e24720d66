import { all } from 'iso-3166-1'
import type { Option } from '../_ui/field.tsx'
import { labelOf } from '../_ui/label.ts'
import { eachLanguage, locale } from '../_words/index.ts'

/** Every country of ISO 3166-1 by its name. */
export const countries = eachLanguage((language): readonly Option[] =>
  all()
    .map(({ alpha2 }) => ({ value: alpha2, label: labelOf('countries', alpha2) }))
    .sort((a, b) => a.label.localeCompare(b.label, locale(language))),
)
