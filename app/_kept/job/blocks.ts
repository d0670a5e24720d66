import type { KeptBlock } from '#lib/entry/kept-sheet.ts'
import { words } from '../../_words/index.ts'
import { freezeBlocks } from '../freeze.ts'
import { drawingsOf } from './drawings.ts'
import type { Job } from './job.ts'
import { listsOf } from './lists.ts'
import { quantitiesOf } from './quantities.ts'
import { takenIn } from './taken.ts'
import { standingOf, totalsOf, worksOf } from './totals.ts'
import { workingOf } from './working.ts'

/**
 * A job sheet as parts that are kept, in the order in which it prints. `test/app/kept-whole.test.ts` holds them against
 * the page: what that prints, these must have.
 */
export function jobBlocks(job: Job): KeptBlock[] {
  const t = words('job')
  const { sheet, inputs } = job
  const frozen = (blocks: Parameters<typeof freezeBlocks>[0]) => freezeBlocks(blocks, inputs.system)
  return [
    ...frozen([
      ...standingOf(job),
      totalsOf(job),
      { kind: 'note', text: [t('sheet.waterNote'), ...(sheet.heat ? [t('sheet.heatNote')] : [])].join(' ') },
      ...worksOf(job),
      quantitiesOf(job),
    ]),
    ...listsOf(job),
    { kind: 'note', text: t('sheet.cautionsNote') },
    ...drawingsOf(job),
    ...frozen(takenIn(job)),
    ...workingOf(job),
  ]
}
