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

/** Digests of the pictures that a plain form led back with: new ones, and those sent before. */
export function photosOf(query: Query): { ready: readonly string[]; again: readonly string[] } {
  const digests = (value: Query[string]) => [
    ...new Set(listed(value).filter((text) => /^[0-9a-f]{64}$/.test(text))),
  ]
  return { ready: digests(query.photo), again: digests(query.photoAgain) }
}

/**
 * What became of the photos of a plain form, from the address that it led back to.
 *
 * @param here where those stand that are on this page already, in words of the page
 */
export function PhotoTold({ query, here }: { query: Query; here?: string | undefined }) {
  const t = words('photos')
  const { ready, again } = photosOf(query)
  const sentences = listed(query.photoFault).map((text) => faultSentence(faultFrom(text), t('photo')))
  if (ready.length + again.length + sentences.length === 0 && here === undefined) return null
  const wrong = sentences.length > 0
  return (
    <div className={wrong ? 'act-told act-wrong' : 'act-told'} role={wrong ? 'alert' : 'status'}>
      {ready.length > 0 && <p>{t('own.ready', { count: ready.length })}</p>}
      {again.length > 0 && <p>{t('own.again', { count: again.length })}</p>}
      {here !== undefined && <p>{here}</p>}
      {[...new Set(sentences)].map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  )
}
