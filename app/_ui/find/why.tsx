import { Fragment } from 'react'
import { askedLanguage } from '#app/asked.ts'
import type { Why } from '#lib/search/index.ts'
import { words } from '../../_words/index.ts'
import { asWritten } from '../as-written.ts'
import { nameOf } from '../label.ts'

/** Why a thing was found: what matched, how and where, and the words around it. */
export function WhyFound({ why }: { why: readonly Why[] }) {
  const t = words('find')
  if (why.length === 0) return null
  const placed = why.filter((one) => one.excerpt !== undefined)
  const { excerpt, language } = placed.find(isRead) ?? placed[0] ?? {}
  return (
    <div className="why">
      {excerpt !== undefined && (
        <p className="excerpt" {...langOf(language)}>
          {excerpt.map(({ text, marked }, index) => {
            const key = `${index} ${text}`
            return marked ? <mark key={key}>{text}</mark> : <Fragment key={key}>{text}</Fragment>
          })}
        </p>
      )}
      <ul className="plain-list" aria-label={t('why.label')}>
        {why.map((one) => (
          <li key={`${one.typed} ${one.matched} ${one.field}`}>
            {t(`why.${one.how}`, {
              typed: one.typed,
              matched: nameOf(one.matched, one.names),
              field: t(`why.field.${one.field}`),
            })}
          </li>
        ))}
      </ul>
    </div>
  )
}

const isRead = ({ language }: Why): boolean => language === askedLanguage()

/** Nothing where it is the page's own. */
function langOf(language: string | undefined): { lang?: string } {
  if (language === undefined) return asWritten()
  return language === askedLanguage() ? {} : { lang: language }
}
