import type { ReactNode } from 'react'
import { materialLabel } from '../../../_ui/label.ts'
import { words } from '../../../_words/index.ts'
import { KeepFigures } from './keep-figures.tsx'
import { keepWords } from './keep-words.ts'
import { fieldLabel } from './labels.ts'
import type { Inputs, ReadField } from './read-inputs.ts'

/** One's own figures in place of what is known of the materials and of what is assumed, and the browser's memory. */
export function OwnFields({ inputs, figure }: { inputs: Inputs; figure: (field: ReadField) => ReactNode }) {
  const t = words('job')
  const { own, assumed, packs, prices } = inputs
  const typed = [...own.flatMap(({ fields }) => fields), ...assumed].some(({ read }) => read.text !== '')
  const labels = [
    ...own.flatMap(({ material, fields }) =>
      fields.map((field): [string, string] => [
        field.name,
        t('sheet.pair', { name: materialLabel(material), value: fieldLabel(field) }),
      ]),
    ),
    ...[...assumed, ...packs, ...prices].map((field): [string, string] => [field.name, fieldLabel(field)]),
  ]
  return (
    <details id="own" open={typed}>
      <summary>{t('own.title')}</summary>
      <p className="note">{t('own.note')}</p>
      {own.map(({ material, fields }) => (
        <fieldset key={material}>
          <legend>{materialLabel(material)}</legend>
          <div className="form-grid">{fields.map(figure)}</div>
        </fieldset>
      ))}
      <fieldset>
        <legend>{t('own.assumed')}</legend>
        <div className="form-grid">{assumed.map(figure)}</div>
      </fieldset>
      <div className="job-keep" data-script>
        <KeepFigures labels={Object.fromEntries(labels)} words={keepWords()} />
      </div>
    </details>
  )
}
