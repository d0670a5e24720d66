import { content } from '#lib/content/index.ts'
import { freeSlug } from '#lib/db/free-slug.ts'
import type { CaseBody } from '#lib/entry/case.ts'
import { labelOf } from '../_ui/label.ts'
import { words } from '../_words/index.ts'
import { slugOf } from './ids.ts'
import type { FormView } from './view.ts'

type Partly<T> = { readonly [K in keyof T]?: T[K] extends object ? Partly<T[K]> : T[K] }

/**
 * What the last step proposes in fields that are still blank: a free address from the title, today's date, and of a
 * case a summary from its facts. It stands in the field for its writer to change, and is kept only as they send it;
 * the address not even then, so that one that is taken meanwhile gives way to another.
 */
export async function proposals(view: FormView): Promise<Readonly<Record<string, string>>> {
  const { kind, read, draft } = view
  return {
    ...(draft.slug === null && { 'entry.slug': await proposedSlug(view) }),
    ...(kind === 'case' && {
      recordedOn: new Date().toISOString().slice(0, 10),
      summary: caseSummary(read.body as Partly<CaseBody>),
    }),
  }
}

/** The address that an entry is sent under: its own, the one its writer typed, or one that is free. */
export const addressOf = async (view: FormView): Promise<string> =>
  view.draft.slug ?? (view.typed['entry.slug']?.trim() || (await proposedSlug(view)))

/** Whether the address is ours to change: nobody typed one, and none was published yet. */
export const isOurAddress = ({ draft, typed }: Pick<FormView, 'draft' | 'typed'>): boolean =>
  draft.slug === null && (typed['entry.slug'] ?? '').trim() === ''

/** Longest address made from words: a number must fit behind it. */
const MOST = 70

/** An address made of these words that nothing has; of the kind's name where they hold no letter that it could. */
export const freeAddress = (kind: FormView['kind'], named: string): Promise<string> =>
  freeSlug(slugOf(named, MOST) || kind, (slug) =>
    kind === 'material' ? content().materials.has(slug) : kind === 'source' && content().sources.has(slug),
  )

function proposedSlug({ kind, typed, read }: FormView): Promise<string> {
  const { on = '' } = read.body as { on?: string }
  return freeAddress(
    kind,
    kind === 'visit' ? `${slugOf(typed.case ?? '', MOST - 11)} ${on}` : (typed.title ?? ''),
  )
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
