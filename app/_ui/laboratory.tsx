import type { ReactNode } from 'react'
import { LAB_PROPERTIES, LAB_UNITS, type LabProperty, type LabResult } from '#lib/entry/laboratory.ts'
import type { Range } from '#lib/mortar/range.ts'
import { formatNumber } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { asWritten, inEnglish } from './as-written.ts'
import { DataTable } from './data-table.tsx'
import { Fold } from './fold.tsx'
import { type LabRange, labRanges } from './lab-ranges.ts'
import { Quantity, withUnit } from './quantity.tsx'
import { RangeBar } from './range-bar.tsx'
import { Section } from './section.tsx'
import { BasisMark, SourceMark, SourceText } from './source-mark.tsx'
import { Written } from './written.tsx'

const t = words('evidence')

/** A laboratory result, and what it was found of where a page shows those of several. */
export type ShownResult = LabResult & { readonly of?: ReactNode }

/**
 * Laboratory results, each property as strips on one scale with the ranges that the site holds.
 *
 * @param props.units stones or other units that the mortar is for, whose own figures stand beside its
 */
export function LaboratorySection(props: {
  results: readonly ShownResult[] | undefined
  units?: readonly string[]
  title?: string
  note?: string
}) {
  const { results = [], units = [], title, note } = props
  if (results.length === 0) return null
  return (
    <Section id="laboratory" title={title ?? t('laboratory.title')} note={note ?? t('laboratory.note')}>
      {LAB_PROPERTIES.map((property) => (
        <Strips
          key={property}
          property={property}
          results={results.filter((one) => one.property === property)}
          units={units}
        />
      ))}
    </Section>
  )
}

function Strips(props: { property: LabProperty; results: readonly ShownResult[]; units: readonly string[] }) {
  const { property, results, units } = props
  if (results.length === 0) return null
  const unit = LAB_UNITS[property]
  const ranges = labRanges(property, units)
  const max = scaleOf(results, ranges)
  const caption = t(`laboratory.property.${property}`)
  return (
    <>
      <Fold summary={caption}>
        <DataTable
          label={caption}
          caption={caption}
          stack
          columns={[
            { key: 'what', head: t('laboratory.what'), names: true },
            { key: 'value', head: t('laboratory.value'), tight: true },
            { key: 'drawn', head: t('laboratory.drawn') },
            { key: 'how', head: t('laboratory.how') },
          ]}
          rows={[
            ...results.map((result, index) => ({
              key: `${index} ${result.method}`,
              cells: {
                what: result.of ?? t('laboratory.own'),
                value: <Quantity value={rangeOf(result.value)} unit={unit} />,
                drawn: <RangeBar value={rangeOf(result.value)} max={max} />,
                how: <How result={result} />,
              },
            })),
            ...ranges.map((range) => ({
              key: range.key,
              cells: {
                what: <RangeName range={range} />,
                value: spanText(range, unit),
                drawn: <Drawn range={range} max={max} />,
                how: <Source range={range} />,
              },
            })),
          ]}
        />
      </Fold>
      {ranges.length === 0 && <p className="note">{t('laboratory.none')}</p>}
    </>
  )
}

/** Wide enough for the results and for what lies near them: a stone can be a hundred times as strong as its mortar. */
function scaleOf(results: readonly LabResult[], ranges: readonly LabRange[]): number {
  const own = Math.max(...results.map(({ value }) => value.high))
  const near = ranges.flatMap(({ high, low = 0 }) => (high !== undefined && low <= 4 * own ? [high] : []))
  return Math.max(own, ...near.filter((high) => high <= 8 * own)) * 1.05 || 1
}

function RangeName({ range: { href, label } }: { range: LabRange }) {
  const name = t('laboratory.range', { name: label })
  return href === undefined ? name : <a href={href}>{name}</a>
}

/** Beyond the scale nothing is drawn: a bar cut off would say less than it is. */
function Drawn({ range: { low = 0, high, typical }, max }: { range: LabRange; max: number }) {
  if (low > max || (high ?? low) > max) return <span className="note">{t('laboratory.offScale')}</span>
  return <RangeBar value={{ low, high: high ?? max, ...(typical !== undefined && { typical }) }} max={max} />
}

function spanText({ low, typical, high }: LabRange, unit: string): ReactNode {
  if (low !== undefined && typical !== undefined && high !== undefined)
    return <Quantity value={{ low, typical, high }} unit={unit} />
  if (low === undefined) return t('laboratory.upTo', { figure: withUnit(formatNumber(high ?? 0), unit) })
  if (high === undefined) return t('laboratory.from', { figure: withUnit(formatNumber(low), unit) })
  return withUnit(words('common')('parts.span', { low: formatNumber(low), high: formatNumber(high) }), unit)
}

const Source = ({ range: { source, basis, note } }: { range: LabRange }) => (
  <>
    {source === undefined ? <BasisMark basis={basis} /> : <SourceText text={source} basis={basis} />}
    {note !== undefined && (
      <span className="note block" {...(note === t('laboratory.saltNote') ? {} : inEnglish())}>
        {note}
      </span>
    )}
  </>
)

const rangeOf = ({ low, high, typical = (low + high) / 2 }: LabResult['value']): Range => ({
  low,
  typical,
  high,
})

/** How it was measured, at what age and on how many; without those the figure means little. */
function How({ result: { method, ageDays, specimens, source, note } }: { result: LabResult }) {
  const said = [
    ageDays === undefined ? t('laboratory.noAge') : t('laboratory.age', { days: ageDays }),
    ...(specimens === undefined ? [] : [t('laboratory.specimens', { count: specimens })]),
  ]
  return (
    <>
      <Written>{method}</Written>
      <span className="note block">{said.join(', ')}</span>
      {source !== undefined && (
        <span className="block">
          <SourceMark
            source={source.source}
            {...(source.locator !== undefined && { locator: source.locator })}
            written
          />
        </span>
      )}
      {note !== undefined && (
        <span className="note block" {...asWritten()}>
          {note}
        </span>
      )}
    </>
  )
}
