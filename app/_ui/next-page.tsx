import { Refusal } from '#lib/errors.ts'
import { redirect } from '../_http/redirect.ts'
import { words } from '../_words/index.ts'
import { addressWith, type Choices } from './query.ts'

/** The ways on from one page of a list: to its first page, and to the next. */
export function NextPage(props: {
  path: string
  choices: Choices
  after: string | undefined
  next: string | null
}) {
  const { path, choices, after, next } = props
  const t = words('pages')
  if (after === undefined && next === null) return null
  return (
    <p className="actions">
      {after !== undefined && <a href={addressWith(path, choices)}>{t('list.start')}</a>}
      {next !== null && (
        <a className="button button-plain" href={addressWith(path, { ...choices, after: next })}>
          {t('list.next')}
        </a>
      )}
    </p>
  )
}

/** A place to go on from that never was one leads back to the start of the list; all other failures stay failures. */
export const backToStart =
  (path: string) =>
  (error: unknown): never => {
    if (error instanceof Refusal && error.code === 'invalid') redirect(path)
    throw error
  }
