import type { ReactNode } from 'react'
import { labelOf } from '../_ui/label.ts'
import { words } from '../_words/index.ts'
import { saveStep } from '../write/actions.ts'
import type { About } from './about.ts'
import { askedOf } from './asked-of.ts'
import { FormParts } from './form-parts.tsx'
import { formatTime } from './format-time.ts'
import { Keep } from './keep.tsx'
import { keepWords } from './keep-words.ts'
import { LAYOUTS } from './layout.ts'
import { PickLists } from './pick-lists.tsx'
import { namesOf } from './step-names.ts'
import type { FormView } from './view.ts'

const t = words('write')

interface Props {
  readonly view: FormView
  readonly step: string
  /** List that one more blank item was asked of. */
  readonly more: string | undefined
  readonly proposed?: Readonly<Record<string, string>>
  /** What stands before the fields. */
  readonly before?: ReactNode
  /** Fields that the layout does not know, with their names. */
  readonly extra?: { readonly names: readonly string[]; readonly fields: ReactNode }
}

/** What a browser keeps beside the text of a draft. */
const aboutOf = ({ draft, kind, title }: FormView, step: string): About => ({
  by: draft.ownerKey,
  asked: askedOf(draft),
  title: t('form.kindOf', { kind: labelOf('kinds', kind), title: title ?? t('form.untitled') }),
  page: `/write/${draft.id}/${step}`,
  state: 'there',
})

/** One step of a form. Works as a plain post; with JavaScript it also saves by itself. */
export function StepForm({ view, step, more, proposed, before, extra }: Props) {
  const { draft } = view
  // An entry that has its address keeps it.
  const parts = (LAYOUTS[view.kind].find(({ id }) => id === step)?.parts ?? []).filter(
    (part) => part !== 'entry.slug' || draft.slug === null,
  )
  const names = [...namesOf(view, parts, more), ...(extra?.names ?? [])]
  const was = Object.fromEntries(names.map((name) => [name, view.typed[name] ?? '']))
  const sending = step === 'check'
  return (
    <form className="write-form" action={saveStep} id="step" key={`${step} ${draft.version}`} noValidate>
      {/* The first button is the one that Enter presses. */}
      <button className="hidden-words" type="submit" name=":do" value="stay" tabIndex={-1} aria-hidden="true">
        {t('form.stay')}
      </button>
      <input type="hidden" name=":draft" value={draft.id} />
      <input type="hidden" name=":step" value={step} />
      <input type="hidden" name=":was" value={JSON.stringify(was)} />
      <input type="hidden" name=":proposed" value={JSON.stringify(proposed ?? {})} />
      {before}
      <div className="write-parts">
        <FormParts view={view} parts={parts} more={more} proposed={proposed} />
      </div>
      {extra?.fields}
      <PickLists view={view} names={names} />
      <div className="write-actions">
        <p className="note" id="saved" role="status">
          {t('form.saved', { at: formatTime(draft.savedAt) })}
        </p>
        <div className="actions">
          <button className="button" type="submit" name=":do" value={sending ? 'send' : 'next'}>
            {t(sending ? 'form.send' : 'form.next')}
          </button>
          <button className="button button-plain" type="submit" name=":do" value="stay">
            {t('form.stay')}
          </button>
        </div>
      </div>
      <Keep
        {...{ draft: draft.id, step, version: draft.version, form: 'step' }}
        kept={draft.typed}
        words={keepWords()}
        about={aboutOf(view, step)}
      />
    </form>
  )
}
