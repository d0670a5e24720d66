import { unstable_rethrow } from 'next/navigation'
import type { z } from 'zod'
import type { Actor } from '#lib/access/actor.ts'
import { ACTIONS, type ActionDoor, mayPass } from '#lib/access/doors.ts'
import { faultsOf } from '#lib/api/faults.ts'
import { type FieldFault, Refusal } from '#lib/errors.ts'
import { words } from '../_words/index.ts'
import type { ActionState } from './action-state.ts'
import { currentActor } from './actor.ts'
import { faultSentence } from './fault-sentence.ts'
import { problemOfThrown } from './problem.ts'
import { refusalSentence } from './refusal-sentence.ts'

interface Act<T> {
  /** Of the form's fields, all of them text, blank ones not there; it must name every field it takes. */
  readonly schema: z.ZodType<T>
  /** What the form calls a field. */
  readonly label: (field: string) => string
  /** Does the deed: ends in `redirect()`, or answers what was done. A Refusal goes back to the form. */
  readonly run: (actor: Actor, given: T, form: FormData) => Promise<string>
}

/** Fields that React adds of its own. */
const NOT_OURS = /^\$/
/** Never sent back. */
const SECRET = /password|secret/i

/**
 * A server action: asks the table of doors, reads the form with its schema, does the deed, and says what was wrong
 * with everything typed still there. Works as a plain form post; give it to `ActionForm`.
 *
 * @example export const signIn = act('signIn', { schema, label, run: async (actor, { email }) => … })
 */
export function act<T>(door: ActionDoor, { schema, label, run }: Act<T>) {
  return async (before: ActionState, form: FormData): Promise<ActionState> => {
    const given = fieldsOf(form)
    const typed = Object.fromEntries(
      Object.entries(given)
        .filter(([name]) => !SECRET.test(name))
        .map(([name, value]) => [name, typeof value === 'string' ? value : value.join(' ')]),
    )
    const state = { typed, errors: {}, turn: before.turn + 1 }
    try {
      const actor = await currentActor()
      if (!mayPass(actor, ACTIONS[door])) return { ...state, refusal: refusalOf(actor) }
      const parsed = schema.safeParse(given, { reportInput: true })
      if (!parsed.success) return { ...state, ...toldOf(faultsOf(parsed.error.issues, given), label) }
      return { ...state, done: await run(actor, parsed.data, form) }
    } catch (thrown) {
      unstable_rethrow(thrown)
      if (thrown instanceof Refusal && thrown.faults.length > 0)
        return { ...state, ...toldOf(thrown.faults, label, refusalSentence(thrown.message)) }
      const { detail } = problemOfThrown(thrown)
      return { ...state, refusal: detail ?? words('account')('form.fault') }
    }
  }
}

const refusalOf = (actor: Actor) =>
  words('account')(actor.kind === 'guest' ? 'form.signInFirst' : 'form.notYours')

/** Text fields as they were sent, blank ones left out; a name that comes more than once is a list. */
function fieldsOf(form: FormData): Record<string, string | string[]> {
  const fields: Record<string, string | string[]> = {}
  for (const name of new Set(form.keys())) {
    if (NOT_OURS.test(name)) continue
    const texts = form.getAll(name).filter((value) => typeof value === 'string' && value !== '') as string[]
    const [first, ...more] = texts
    if (first !== undefined) fields[name] = more.length > 0 ? texts : first
  }
  return fields
}

function toldOf(
  faults: readonly FieldFault[],
  label: (field: string) => string,
  otherwise?: string,
): Pick<ActionState, 'errors' | 'refusal'> {
  const errors: Record<string, string> = {}
  for (const fault of faults)
    errors[fault.field] ??= faultSentence(
      SECRET.test(fault.field) ? { ...fault, value: '' } : fault,
      label(fault.field),
    )
  return {
    errors,
    ...(Object.keys(errors).length === 0 && otherwise !== undefined && { refusal: otherwise }),
  }
}
