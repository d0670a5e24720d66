import type { Changes } from '../../../_ui/changes-since.ts'
import { Notice } from '../../../_ui/notice.tsx'
import { words } from '../../../_words/index.ts'
import type { Versions } from './versions.ts'

interface Props {
  readonly changes: Changes | null
  readonly versions: Versions
  readonly latest: number
  /** The same job with today's versions. */
  readonly today: string
}

/** Says exactly what became different since the address of this sheet was made. */
export function VersionNotice({ changes, versions, latest, today }: Props) {
  const t = words('job')
  const older = versions.revision < latest
  if (changes === null && !older) return null
  return (
    <Notice kind="note" title={changes === null ? undefined : t('versions.changed')}>
      {older && <p>{t('versions.revision', { revision: versions.revision, latest })}</p>}
      {changes?.edition && <p>{t('versions.edition', { ...changes.edition })}</p>}
      {changes?.sums && <p>{t('versions.sums', { ...changes.sums })}</p>}
      {changes && (
        <>
          <p>{t(changes.partly ? 'versions.partly' : `versions.${changes.figures}`)}</p>
          <p className="screen-only">
            <a href={today}>{t('versions.fresh')}</a>
          </p>
        </>
      )}
    </Notice>
  )
}
