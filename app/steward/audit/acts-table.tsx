import type { listActs } from '#lib/db/audit.ts'
import { DataTable } from '../../_ui/data-table.tsx'
import { words } from '../../_words/index.ts'

const t = words('steward')

type Lines = Awaited<ReturnType<typeof listActs>>['lines']

/** Deeds, one a row. */
export function ActsTable({ lines }: { lines: Lines }) {
  if (lines.length === 0) return <p>{t('audit.none')}</p>
  return (
    <DataTable
      caption={t('audit.title')}
      label={t('audit.title')}
      hideCaption
      stack
      columns={(['at', 'who', 'act', 'subject', 'detail'] as const).map((id) => ({
        key: id,
        head: t(`audit.column.${id}`),
      }))}
      rows={lines.map(({ id, at, actorKey, name, act, subject, detail }) => ({
        key: id,
        cells: {
          at: at.toISOString().slice(0, 19).replace('T', ' '),
          who: <a href={`/steward/audit?${new URLSearchParams({ person: actorKey })}`}>{name ?? actorKey}</a>,
          act: act.replaceAll('-', ' '),
          subject: <a href={`/steward/audit?${new URLSearchParams({ subject })}`}>{subject}</a>,
          detail: Object.entries(detail as Record<string, unknown>)
            .map(([key, value]) => `${key} ${String(value)}`)
            .join(', '),
        },
      }))}
    />
  )
}
