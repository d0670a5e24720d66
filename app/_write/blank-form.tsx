import type { ReactNode } from 'react'
import { addressWith } from '../_ui/query.ts'
import { words } from '../_words/index.ts'
import { BlankKeep } from './blank-keep.tsx'
import { FormParts } from './form-parts.tsx'
import { keepWords } from './keep-words.ts'
import { LAYOUTS } from './layout.ts'
import { PickLists } from './pick-lists.tsx'
import { namesOf } from './step-names.ts'
import { type StepWord, stepTitle } from './step-nav.tsx'
import type { FormView } from './view.ts'

const t = words('write')

/** Pictures take a signal, and the last step sends. */
const NOT_BLANK = ['photos', 'check']

interface Props {
  readonly view: FormView
  /** What a draft written on it begins from. */
  readonly asked: Readonly<Record<string, string>>
  readonly title: string
}

/** All steps of a form on one page, so that it is kept as one. It shows once a script knows that it is needed. */
export function BlankForm({ view, asked, title }: Props) {
  const steps = LAYOUTS[view.kind].filter(({ id }) => !NOT_BLANK.includes(id))
  const names = steps.flatMap(({ parts }) => namesOf(view, parts, undefined))
  const was = Object.fromEntries(names.map((name) => [name, view.typed[name] ?? '']))
  return (
    <BlankKeep
      by={view.draft.ownerKey}
      first={steps[0]?.id ?? ''}
      title={title}
      words={{ ...keepWords(), notYours: t('blank.notYours'), stays: t('blank.stays') }}
      asked={asked}
      signal={
        <>
          <p>
            {t('blank.signal')} <a href={addressWith('/write/new', asked)}>{t('blank.begin')}</a>
          </p>
          <noscript>
            <p>{t('blank.noScript')}</p>
          </noscript>
        </>
      }
    >
      <form className="write-form" id="step" noValidate autoComplete="off">
        <input type="hidden" name=":step" value={steps[0]?.id ?? ''} />
        <input type="hidden" name=":was" value={JSON.stringify(was)} />
        <input type="hidden" name=":proposed" value="{}" />
        <p>{t('blank.room')}</p>
        {steps.map(({ id, parts }) => (
          <BlankStep key={id} id={id} lead={t(`step.${id as StepWord}.lead`)}>
            <FormParts view={view} parts={parts} more={undefined} />
          </BlankStep>
        ))}
        {view.kind === 'visit' && <BlankStep id="photos" lead={t('blank.photos')} />}
        <BlankStep id="check" lead={t('blank.check')} />
        <PickLists view={view} names={names} />
      </form>
    </BlankKeep>
  )
}

const BlankStep = ({ id, lead, children }: { id: string; lead: string; children?: ReactNode }) => (
  <section className="write-parts" aria-labelledby={`step-${id}`}>
    <h2 id={`step-${id}`}>{stepTitle(id)}</h2>
    <p>{lead}</p>
    {children}
  </section>
)
