import type { CaseBody } from '#lib/entry/case.ts'
import { labelOf } from '../_ui/label.ts'
import { words } from '../_words/index.ts'
import { slugOf } from './ids.ts'
import type { FormView } from './view.ts'

type Partly<T> = { readonly [K in keyof T]?: T[K] extends object ? Partly<T[K]> : T[K] }

/**
 * What the last step proposes in fields that are still blank: an address from the title, today's date, and of a case
 * a summary from its facts. It stands in the field for its writer to change, and is kept only as they send it.
 */
export function proposals({ kind, typed, draft, read }: FormView): Readonly<Record<string, string>> {
  const { on = '' } = read.body as { on?: string }
  const named = kind === 'visit' ? `${typed.case ?? ''} ${on}` : (typed.title ?? '')
  return {
    ...(draft.slug === null && { 'entry.slug': slugOf(named) }),
    ...(kind === 'case' && {
      recordedOn: new Date().toISOString().slice(0, 10),
      summary: caseSummary(read.body as Partly<CaseBody>),
    }),
  }
}

function caseSummary({ place, fabric, works }: Partly<CaseBody>): string {
  const work = works?.[0]
  const where = place?.locality ?? place?.region
  if (
    work?.use === undefined ||
    work.finished === undefined ||
    fabric?.wall === undefined ||
    where === undefined
  )
    return ''
  return words('write')('summary.case', {
    use: labelOf('uses', work.use),
    wall: labelOf('wall-types', fabric.wall).toLowerCase(),
    place: where,
    year: work.finished.slice(0, 4),
  })
}
