import { words } from '../../_words/index.ts'
import { amountText, usualText } from '../amount-text.ts'
import type { FigureVersions } from '../changes-since.ts'
import { keepAddress } from '../keep-address.ts'
import { BenchBlock } from './blocks.tsx'
import type { BenchData } from './brought.ts'
import { Cited } from './cited.tsx'
import type { FieldRead, FormRead } from './read.ts'
import type { Shown } from './shown.ts'
import { StepTable } from './working.tsx'

interface Props {
  readonly form: FormRead
  readonly shown: Shown
  readonly data: BenchData
  readonly versions: FigureVersions
  /** Path of the page, and what follows it for this result. */
  readonly path: string
  readonly address: string
  readonly origin: string
}

/** What came out: inputs in a line, parts of the result, downloads, working, versions. */
export function BenchResult({ form, shown, data, versions, path, address, origin }: Props) {
  const t = words('workOut')
  const query = address.slice(path.length)
  const open = form.typed.working === 'open'
  return (
    <section className="bench-result" id="result" aria-labelledby="result-head">
      <h2 id="result-head" tabIndex={-1}>
        {form.label === '' ? t('result.title') : form.label}
      </h2>
      {form.fresh && <p className="screen-only note">{t('result.example')}</p>}
      <WorkedFrom fields={form.fields} />
      {shown.blocks.map((block, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: parts keep their places; notices have no name
        <BenchBlock key={place} block={block} system={form.system} data={data} />
      ))}
      <p className="facts-line screen-only">
        <span>{t('result.take')}</span>
        <a className="touch" href={`${path}/figures.csv${query}`} download>
          {t('result.csv')}
        </a>
        <a className="touch" href={`${path}/figures.json${query}`} download>
          {t('result.json')}
        </a>
        {shown.steps.length > 0 && (
          <a className="touch" href={`${address}&working=open#working`}>
            {t('result.openWorking')}
          </a>
        )}
        {!form.fresh && (
          <a className="touch" href={keepAddress(address)} rel="nofollow">
            {t('result.keep')}
          </a>
        )}
      </p>
      {shown.steps.length > 0 && (
        <details className="bench-working" id="working" open={open}>
          <summary>{t('working.show')}</summary>
          <p className="note">{t('working.note')}</p>
          <StepTable steps={shown.steps} sourceOf={(text) => <Cited text={text} cites={data.cites} />} />
        </details>
      )}
      <p className="note bench-versions">
        {t('result.versions', {
          edition: versions.edition,
          sums: String(versions.sums),
          digest: versions.digest,
        })}{' '}
        <span className="screen-only">{t('result.versionsNote')}</span>
        <span className="print-only address">{`${origin}${address}`}</span>
      </p>
    </section>
  )
}

/** Every input in one paragraph: on paper the form is not there. */
function WorkedFrom({ fields }: { fields: readonly FieldRead[] }) {
  const t = words('workOut')
  return (
    <p className="bench-inputs note">
      <strong>{t('result.inputs')}</strong> {inputPhrases(fields).join('; ')}.
    </p>
  )
}

/** Every input that was given, each as one phrase. */
export const inputPhrases = (fields: readonly FieldRead[]): string[] =>
  fields.flatMap((read) => {
    const value = inputText(read)
    return value === undefined ? [] : [words('workOut')('result.pair', { name: read.field.label, value })]
  })

/** What a field gave, as words; undefined where it gave nothing. */
export function inputText({ field, text, read, list, askedUnit }: FieldRead): string | undefined {
  const t = words('workOut')
  if (field.kind === 'check') return text === '' ? undefined : t('result.yes')
  if (field.kind === 'choice')
    return field.options.find(({ value }) => value === (text === '' ? field.first : text))?.label
  if (field.kind === 'list') return list && t('echoList', { count: list.length })
  if (read?.amount) return amountText(read.amount, askedUnit)
  if (!field.usual) return undefined
  return t('result.usual', {
    value: usualText(field.usual, field.unit, askedUnit),
    basis: words('terms')(`basis.${field.usual.basis}.label`),
  })
}
