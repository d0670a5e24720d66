import type { Step } from '#lib/mortar/explain.ts'
import type { JobSheet } from '#lib/mortar/job-types.ts'
import { DataTable } from '../../../_ui/data-table.tsx'
import { materialLabel } from '../../../_ui/label.ts'
import { Quantity } from '../../../_ui/quantity.tsx'
import { SourceText } from '../../../_ui/source-mark.tsx'
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
      <summary>{t('sheet.workingShow')}</summary>
      <p className="note">{t('sheet.workingNote')}</p>
      <DataTable<string>
        stack
        label={t('sheet.working')}
        caption={t('sheet.working')}
        hideCaption
        columns={[
          { key: 'symbol', head: t('sheet.symbol'), names: true },
          { key: 'means', head: t('sheet.means') },
          { key: 'formula', head: t('sheet.formula') },
          { key: 'result', head: t('sheet.result'), number: true },
          { key: 'source', head: t('sheet.source') },
        ]}
        rows={sheet.steps.map((step, place) => ({ key: `${place}`, cells: cellsOf(step) }))}
      />
      {assumed.length > 0 && <p className="note">{t('sheet.assumed', { list: formatList(assumed) })}</p>}
      {unknown.length > 0 && <p className="note">{t('sheet.unknown', { list: formatList(unknown) })}</p>}
    </details>
  )
}

const cellsOf = ({ symbol, means, formula, numbers, result, unit, source }: Step) => ({
  symbol,
  means: meaning(means),
  formula: formula === '' ? t('sheet.given') : <Formula formula={formula} numbers={numbers} />,
  result: <Quantity value={result} unit={unit} />,
  source: source === undefined ? null : <SourceText text={source} />,
})

const Formula = ({ formula, numbers }: { formula: string; numbers: string }) => (
  <>
    {formula}
    <br />
    <span className="note">= {numbers}</span>
  </>
)

type Leaf<T, P extends string = ''> = {
  [K in keyof T & string]: T[K] extends string ? `${P}${K}` : Leaf<T[K], `${P}${K}.`>
}[keyof T & string]

/** The sums name meanings by keys that their own test holds to the catalogue. */
const meaning = (key: string) => words('steps')(key as Leaf<Messages['steps']>)

const propertyLabel = (property: string) =>
  words('terms')(`property.${property as keyof Messages['terms']['property']}`)
