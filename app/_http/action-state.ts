/** What a form shows after it was sent: everything typed, and what was wrong. */
export interface ActionState {
  /** What was typed, by field name; secrets are left out. */
  readonly typed: Readonly<Record<string, string>>
  /** One sentence per field that is wrong. */
  readonly errors: Readonly<Record<string, string>>
  /** What is wrong with the whole, in one sentence. */
  readonly refusal?: string
  /** What was done, in one sentence, where the form stays. */
  readonly done?: string
  /** Told apart from the answer before, so that the same fault is read out again. */
  readonly turn: number
}

/** What a form sends to: the action gets what it answered before, and what was typed. */
export type FormAction = (before: ActionState, form: FormData) => Promise<ActionState>

/** The state of a form that was not sent yet, with what it begins with. */
export const startState = (typed: Readonly<Record<string, string>> = {}): ActionState => ({
  typed,
  errors: {},
  turn: 0,
})
