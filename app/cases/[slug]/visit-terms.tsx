import { Fragment } from 'react'
import type { VisitBody } from '#lib/entry/visit.ts'
import { inSentence, termOf } from '../../_ui/label.ts'
import { Said } from '../../_ui/said.tsx'
import { TermLink } from '../../_ui/term-link.tsx'
import { Name } from '../../_ui/term-name.tsx'
import { fieldLabel } from '../../_versions/field-name.ts'

/** What a visit calls the damage, and its class of a condition survey; nothing of what it does not say. */
export const VisitTerms = ({ body }: { body: Pick<VisitBody, 'deterioration' | 'surveyClass'> }) => (
  <>
    <Damage terms={body.deterioration ?? []} />
    {body.surveyClass !== undefined && <SurveyClass id={body.surveyClass} />}
  </>
)

const Damage = ({ terms }: { terms: readonly string[] }) =>
  terms.length === 0 ? null : (
    <span className="note block">
      {fieldLabel(['deterioration'])}:{' '}
      {[...new Set(terms)].map((id, place) => (
        <Fragment key={id}>
          {place > 0 && ', '}
          <TermLink vocabulary="deterioration" id={id} {...(place > 0 && { say: inSentence })} />
        </Fragment>
      ))}
    </span>
  )

/** The class with what it means: alone, `CC 1` says nothing to most. */
function SurveyClass({ id }: { id: string }) {
  const term = termOf('survey-classes', id)
  // Condition, urgency or recommendation: the vocabulary knows which it is a class of.
  const of = term?.broader === undefined ? undefined : termOf('survey-classes', term.broader)
  return (
    <span className="note block">
      {of === undefined ? fieldLabel(['surveyClass']) : <Name {...of} />}:{' '}
      <TermLink vocabulary="survey-classes" id={id} />
      {term?.definition !== undefined && (
        <>
          {'. '}
          <Said of={term} field="definition" />
        </>
      )}
    </span>
  )
}
