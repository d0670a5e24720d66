import type { FieldFault } from '#lib/errors.ts'
import { faultSentence } from '../_http/fault-sentence.ts'
import { words } from '../_words/index.ts'
import type { Query } from './query.ts'

/** A fault as `photoFault` carries it in an address: its code, value and limit. */
export const faultInAddress = ({ code, value = '', limit = '' }: Omit<FieldFault, 'field'>): string =>
  [code, value, limit].join('~').replace(/~+$/, '')

function faultFrom(text: string): FieldFault {
  const [, code = 'other', value, limit] =
    /^([a-z-]{1,40})(?:~([\d.]{0,12}))?(?:~([\d.]{0,12}))?$/.exec(text) ?? []
  return { field: 'photo', code, ...(value && { value }), ...(limit && { limit }) }
}

const listed = (value: Query[string]): readonly string[] =>
  typeof value === 'string' ? [value] : (value ?? [])

/** What became of the photos of a plain form, from the address that it led back to. */
export function PhotoTold({ query }: { query: Query }) {
  const t = words('photos')
  const ready = listed(query.photo)
  const sentences = listed(query.photoFault).map((text) => faultSentence(faultFrom(text), t('photo')))
  if (ready.length + sentences.length === 0) return null
  const wrong = sentences.length > 0
  return (
    <div className={wrong ? 'act-told act-wrong' : 'act-told'} role={wrong ? 'alert' : 'status'}>
      {ready.length > 0 && <p>{t('own.ready', { count: ready.length })}</p>}
      {[...new Set(sentences)].map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  )
}
