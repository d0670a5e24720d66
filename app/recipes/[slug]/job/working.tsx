import { Fragment } from 'react'
import type { JobSheet } from '#lib/mortar/job-types.ts'
import { materialLabel } from '../../../_ui/label.ts'
import { SourceText } from '../../../_ui/source-mark.tsx'
import { StepTable } from '../../../_ui/workshop/working.tsx'
import { formatList } from '../../../_words/format.ts'
import { words } from '../../../_words/index.ts'
import { ofWork, propertyLabel } from './labels.ts'

const t = words('job')

/**
 * Every line of working: formula, numbers, result with its range, source.
 *
 * @param props.left is it left out, for a script to ask for when it is opened?
 */
export function Working({ sheet, open, left }: { sheet: JobSheet; open: boolean; left: boolean }) {
  const summary = <summary>{words('workOut')('working.show')}</summary>
  if (left)
    return (
      <details className="job-working" id="working" data-left>
        {summary}
      </details>
    )
  const unknown = sheet.unknowns.map(({ material, property }) =>
    t('sheet.pair', { name: materialLabel(material), value: propertyLabel(property) }),
  )
  return (
    <details className="job-working" id="working" open={open}>
      {summary}
      <p className="note">{words('workOut')('working.note')}</p>
      {sheet.works.length > 1 &&
        sheet.works.map(({ kind }, k) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two works may be of one kind, and the list never changes
          <Fragment key={k}>
            <h4>{ofWork(k + 1, true, t(`kinds.${kind}`))}</h4>
            <StepTable steps={sheet.steps.filter(({ work }) => work === k + 1)} sourceOf={source} />
          </Fragment>
        ))}
      {sheet.works.length > 1 && <h4>{t('works.all')}</h4>}
      <StepTable steps={sheet.steps.filter(({ work }) => work === undefined)} sourceOf={source} />
      {unknown.length > 0 && <p className="note">{t('sheet.unknown', { list: formatList(unknown) })}</p>}
    </details>
  )
}

const source = (text: string) => <SourceText text={text} />
