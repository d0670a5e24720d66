import type { WorkedOn } from '#lib/entry/worked-on.ts'
import { asWritten } from '../_ui/as-written.ts'
import { DataTable } from '../_ui/data-table.tsx'
import { Section } from '../_ui/section.tsx'
import { WrittenIn } from '../_ui/written.tsx'
import { words } from '../_words/index.ts'
import { splitLanguage } from '../_words/language.ts'
import { kindOf } from './kinds.ts'

const t = words('kept')

/** A sheet that an entry rests on, and of a visit which one. */
export interface Basis {
  readonly copy: WorkedOn
  readonly from?: string
}

/** The sheets that an entry was worked out on, with the figures that were copied from them; nothing where it names none. */
export const WorkedOnSection = ({ sheets }: { sheets: readonly Basis[] }) =>
  sheets.length === 0 ? null : (
    <Section id="worked-on" title={t('worked.title')} note={t('worked.note')}>
      {sheets.map((basis) => (
        <Sheet key={`${basis.from ?? ''} ${basis.copy.sheet}`} {...basis} />
      ))}
    </Section>
  )

/** One of them. */
export function Sheet({ copy, from }: Basis) {
  const { language } = splitLanguage(copy.address)
  return (
    <div className="worked-on">
      <h3 {...asWritten()}>{copy.title}</h3>
      {from !== undefined && <p className="note">{from}</p>}
      {copy.of !== undefined && (
        <p>
          <WrittenIn say={(of) => t('worked.of', { of })}>{copy.of}</WrittenIn>
        </p>
      )}
      <Figures label={copy.title} figures={copy.figures} lang={language} />
      <p className="note">
        {t('worked.made', {
          kind: kindOf(copy.calculation),
          edition: copy.edition,
          sums: String(copy.sums),
          digest: copy.digest,
        })}{' '}
        {copy.recipe !== undefined && t('worked.recipe', { ref: copy.recipe })}{' '}
        {/* In the language that it was worked in: there its figures are read, and print, as they were. */}
        <a className="screen-only" href={copy.address} hrefLang={language} rel="nofollow">
          {t('worked.live')}
        </a>
      </p>
    </div>
  )
}

interface Printed {
  readonly label: string
  readonly figures: WorkedOn['figures']
  /** In which they printed. */
  readonly lang?: string
}

/** The figures of a sheet, as they printed. */
export const Figures = ({ label, figures, lang }: Printed) => (
  <DataTable<string>
    stack
    label={label}
    caption={label}
    hideCaption
    columns={[
      { key: 'label', head: t('worked.figure'), names: true },
      { key: 'value', head: t('worked.value') },
    ]}
    rows={figures.map((figure, place) => ({
      key: `${place}`,
      cells: {
        label: <span lang={lang}>{figure.label}</span>,
        value: <span lang={lang}>{figure.value}</span>,
      },
    }))}
  />
)
