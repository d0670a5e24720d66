import { all } from 'iso-3166-1'
import type { Option } from '../_ui/field.tsx'
import { labelOf } from '../_ui/label.ts'
import { eachLanguage, locale } from '../_words/index.ts'

/** Every country of ISO 3166-1 by its name. */
export const countries = eachLanguage((language): readonly Option[] => {
  const names = new Intl.DisplayNames([locale(language)], { type: 'region', fallback: 'code' })
  return all()
    .map(({ alpha2 }) => {
      const label = labelOf('countries', alpha2)
      return { value: alpha2, label: label === alpha2 ? (names.of(alpha2) ?? alpha2) : label }
    })
    .sort((a, b) => a.label.localeCompare(b.label, locale(language)))
})
