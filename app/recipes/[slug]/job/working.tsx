import type { JobSheet } from '#lib/mortar/job-types.ts'
import { materialLabel } from '../../../_ui/label.ts'
import { SourceText } from '../../../_ui/source-mark.tsx'
import { StepTable } from '../../../_ui/workshop/working.tsx'
import { formatList } from '../../../_words/format.ts'
import { type Messages, words } from '../../../_words/index.ts'

const t = words('job')

/** Every line of working: formula, numbers, result with its range, source. */
export function Working({ sheet, open }: { sheet: JobSheet; open: boolean }) {
  const assumed = sheet.assumed.map((name) => words('pages')(`method.assumedOf.${name}`))
  const unknown = sheet.unknowns.map(({ material, property }) =>
    t('sheet.pair', { name: materialLabel(material), value: propertyLabel(property) }),
  )
  return (
    <details className="job-working" id="working" open={open}>
      <summary>{words('workOut')('working.show')}</summary>
      <p className="note">{words('workOut')('working.note')}</p>
      <StepTable steps={sheet.steps} sourceOf={(text) => <SourceText text={text} />} />
      {assumed.length > 0 && <p className="note">{t('sheet.assumed', { list: formatList(assumed) })}</p>}
      {unknown.length > 0 && <p className="note">{t('sheet.unknown', { list: formatList(unknown) })}</p>}
    </details>
  )
}

const propertyLabel = (property: string) =>
  words('terms')(`property.${property as keyof Messages['terms']['property']}`)
