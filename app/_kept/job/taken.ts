import type { Block } from '../../_ui/workshop/shown.ts'
import { words } from '../../_words/index.ts'
import { takenOf } from '../../recipes/[slug]/job/taken-list.tsx'
import type { Job } from './job.ts'

const t = words('job')

/** What was assumed. Of figures in a table the label is the name: each stands once. */
export function takenIn({ sheet, inputs }: Job): Block[] {
  const taken = takenOf(sheet, inputs)
  if (taken.length === 0) return []
  return [
    {
      kind: 'table',
      name: 'taken',
      title: t('taken.title'),
      columns: [
        { key: 'figure', head: t('taken.figure') },
        { key: 'value', head: t('taken.value') },
      ],
      rows: taken.map(({ label, value, unit, basis, source }) => ({
        name: label.slice(0, 200),
        cells: { figure: label, value: { value, unit, basis, ...(source !== undefined && { source }) } },
      })),
      stack: true,
    },
  ]
}
