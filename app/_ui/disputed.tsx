import { openDisputes } from '#lib/db/disputes.ts'
import { versionsPath } from '../_versions/address.ts'
import { words } from '../_words/index.ts'
import { Notice } from './notice.tsx'

/** Says of an entry that somebody disputes it and no reviewer has answered yet; nothing of the others. */
export async function DisputedNotice({
  entry,
}: {
  entry: { readonly slug: string; readonly entryId: string }
}) {
  if ((await openDisputes(entry.entryId)).length === 0) return null
  const t = words('review')
  return (
    <Notice kind="caution" title={t('disputed.title')}>
      <p>{t.rich('disputed.on', { link: (label) => <a href={versionsPath(entry.slug)}>{label}</a> })}</p>
    </Notice>
  )
}
