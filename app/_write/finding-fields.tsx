import { SHAPES } from '#lib/entry/body.ts'
import { type Finding, findingsOf } from '#lib/entry/bounds.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import { Field } from '../_ui/field.tsx'
import { quantityText } from '../_ui/quantity.tsx'
import { workedProportions } from '../_ui/worked.ts'
import { words } from '../_words/index.ts'
import { fullLabel, numberIn } from './labels.ts'
import { itemsOf } from './read.ts'
import type { FormView } from './view.ts'

const t = words('write')

/** Figures of a draft that lie outside practice; none while its body is not whole. */
export function findingsIn({ kind, read }: FormView): readonly Finding[] {
  const parsed = SHAPES[kind].schema.safeParse(read.body)
  if (!parsed.success) return []
  const worked = kind === 'recipe' ? workedProportions((parsed.data as RecipeBody).ingredients) : undefined
  return findingsOf(kind, parsed.data as never, worked?.ok ? worked.value : undefined)
}

/** Where the reason for a finding is asked, and the finding in words. */
export function findingsToMend(view: FormView): { readonly name: string; readonly sentence: string }[] {
  const findings = findingsIn(view)
  return slotted(view, findings).flatMap(({ finding, slot }) =>
    finding.reason === undefined
      ? [{ name: `overrides.${slot}.reason`, sentence: sentence(view, finding) }]
      : [],
  )
}

/** The number of the override that speaks of a field, or the next free one. */
function slotOf({ typed }: FormView, field: string, fresh: number): number {
  const slots = itemsOf(typed, 'overrides')
  return slots.find((slot) => typed[`overrides.${slot}.field`] === field) ?? (slots.at(-1) ?? -1) + 1 + fresh
}

const slotted = (view: FormView, findings: readonly Finding[]) =>
  findings.map((finding, at) => ({ finding, slot: slotOf(view, finding.field, at) }))

/** Names of the fields that {@link FindingFields} draws. */
export const findingNames = (view: FormView, findings: readonly Finding[]): string[] =>
  slotted(view, findings).flatMap(({ slot }) => [`overrides.${slot}.field`, `overrides.${slot}.reason`])

/** Each figure outside practice with its bounds and how they are known, and room for a reason why it is right. */
export function FindingFields({ view, findings }: { view: FormView; findings: readonly Finding[] }) {
  if (findings.length === 0) return null
  return (
    <fieldset className="write-list">
      <legend>{t('check.findings')}</legend>
      <p className="note">{t('check.findingsNote')}</p>
      {slotted(view, findings).map(({ finding, slot }) => (
        <div key={`${finding.id} ${finding.field}`}>
          <p>{sentence(view, finding)}</p>
          <input type="hidden" name={`overrides.${slot}.field`} value={finding.field} />
          <Field name={`overrides.${slot}.reason`} label={t('check.why')}>
            {(control) => (
              <input {...control} type="text" defaultValue={view.typed[`overrides.${slot}.reason`]} />
            )}
          </Field>
        </div>
      ))}
    </fieldset>
  )
}

function sentence({ typed, read }: FormView, { field, value, low, high, unit, basis }: Finding): string {
  const name = read.nameOf(field)
  const print = (figure: number) => quantityText(figure, unit).main
  const told = {
    field: fullLabel(name, numberIn(typed)),
    value: print(value),
    basis: words('terms')(`basis.${basis}.label`),
  }
  if (Number.isFinite(low) && Number.isFinite(high))
    return t('check.finding', { ...told, low: print(low), high: print(high) })
  const bound = Number.isFinite(low)
    ? t('check.least', { low: print(low) })
    : t('check.most', { high: print(high) })
  return t('check.findingOpen', { ...told, bound })
}
