import { Notice } from '../_ui/notice.tsx'
import { formatDate } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import type { Returned } from './returned.ts'

const t = words('write')

/**
 * What a reviewer said as they returned a version: to the whole, and field by field with the way to each.
 *
 * @param draft id of the draft that corrects it; null where there is none yet
 */
export function ReturnedNotice({ returned, draft }: { returned: Returned; draft: string | null }) {
  const { number, by, at, words: said, fields } = returned
  return (
    <Notice
      kind="note"
      title={t('returned.title', { number: String(number), who: by, date: formatDate(at) })}
    >
      {said !== null && <p className="said">{said}</p>}
      {fields.length > 0 && (
        <ul>
          {fields.map(({ name, label, step, words: words_ }) => (
            <li key={`${name} ${words_}`}>
              {draft === null ? label : <a href={`/write/${draft}/${step}#field-${name}`}>{label}</a>}:{' '}
              {words_}
            </li>
          ))}
        </ul>
      )}
    </Notice>
  )
}
