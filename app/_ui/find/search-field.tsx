import { LONGEST_TEXT } from '#lib/search/index.ts'
import { words } from '../../_words/index.ts'
import { Field } from '../field.tsx'
import { SuggestInput } from './suggest-input.tsx'

/** How many suggestions are offered at most. */
export const MOST_SUGGESTED = 8

/** The box for words, with what it understands beside it. Suggestions come where there is a script for them. */
export function SearchField({ text, label, hint }: { text: string; label: string; hint?: string }) {
  const t = words('find')
  return (
    <Field name="q" label={label} hint={hint}>
      {(control) => (
        <SuggestInput
          {...control}
          defaultValue={text}
          maxLength={LONGEST_TEXT}
          address="/api/v1/find/suggest"
          listLabel={t('suggest.list')}
          said={Array.from({ length: MOST_SUGGESTED + 1 }, (_, count) => t('suggest.said', { count }))}
        />
      )}
    </Field>
  )
}
