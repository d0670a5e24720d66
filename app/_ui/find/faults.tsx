import { CASE_FACETS, type CaseFacet } from '#lib/entry/facets.ts'
import type { FieldFault } from '#lib/errors.ts'
import { faultSentence } from '../../_http/fault-sentence.ts'
import { words } from '../../_words/index.ts'
import { Notice } from '../notice.tsx'
import { facetName } from './labels.ts'

/** What of an address could not be used; the rest was. */
export function AddressFaults({ faults }: { faults: readonly FieldFault[] }) {
  if (faults.length === 0) return null
  return (
    <Notice kind="note" title={words('find')('list.faults')}>
      <ul>
        {faults.map((fault) => (
          <li key={`${fault.field} ${fault.value}`}>{faultSentence(fault, labelOfField(fault.field))}</li>
        ))}
      </ul>
    </Notice>
  )
}

/** A parameter by the name that the page has for it. */
function labelOfField(field: string): string {
  const t = words('find')
  if (field === 'q') return t('search.cases')
  if (field === 'sort') return t('sort.label')
  if (field === 'kind') return t('search.kinds')
  if (field === 'end') return words('evidence')('form.end')
  if (field === 'latitude' || field === 'longitude') return t(`like.${field}`)
  if (field === 'a' || field === 'b' || field === 'c')
    return words('evidence')('compare.group', { letter: field.toUpperCase() })
  if (field === 'minYears' || field === 'maxYears') return t('facet.years')
  return isFacet(field) ? facetName(field) : field
}

/** What to show in one field of a form again: what was typed there and why it cannot be used. */
export function typedWrong(faults: readonly FieldFault[], field: string): { value?: string; error?: string } {
  const fault = faults.find((one) => one.field === field)
  if (fault === undefined) return {}
  return { value: String(fault.value ?? ''), error: faultSentence(fault, labelOfField(field)) }
}

const isFacet = (field: string): field is CaseFacet => CASE_FACETS.some((facet) => facet === field)
