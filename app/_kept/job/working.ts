import type { KeptBlock } from '#lib/entry/kept-sheet.ts'
import { materialLabel } from '../../_ui/label.ts'
import { formatList } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'
import { ofWork, propertyLabel } from '../../recipes/[slug]/job/labels.ts'
import { freezeSteps } from '../freeze-steps.ts'
import type { Job } from './job.ts'

/** The working of each of several works, then of the mortar; and what was not known of the materials. */
export function workingOf({ sheet: { works, steps, unknowns } }: Job): KeptBlock[] {
  const t = words('job')
  const several = works.length > 1
  const own = works.flatMap(({ kind }, k) =>
    freezeSteps(
      `work-${k + 1}`,
      ofWork(k + 1, true, t(`kinds.${kind}`)),
      several ? steps.filter(({ work }) => work === k + 1) : [],
    ),
  )
  const shared = steps.filter(({ work }) => work === undefined)
  const list = unknowns.map(({ material, property }) =>
    t('sheet.pair', { name: materialLabel(material), value: propertyLabel(property) }),
  )
  return [
    ...own,
    ...freezeSteps('all', several ? t('works.all') : words('workOut')('working.title'), shared),
    ...(list.length > 0
      ? [{ kind: 'note' as const, text: t('sheet.unknown', { list: formatList(list) }) }]
      : []),
  ]
}
