import { z } from 'zod'
import type { Changes } from '#lib/workflow/draft-fields.ts'

/** Fields of the form that are no fields of the entry. */
const CONTROL = /^[:$]/

const wasSchema = z.record(z.string(), z.string())

export interface PostedStep {
  readonly id: string
  readonly step: string
  /** Which button: `next`, `stay`, `send`, `add <list>`, `remove <item>`. */
  readonly did: string
  readonly changes: Changes
}

/** A step as it was posted: what changed against what its page showed. A field that comes twice is a list. */
export function readStep(form: FormData): PostedStep {
  const control = (name: string) => String(form.get(name) ?? '')
  const was = readWas(control(':was'))
  const names = new Set([...Object.keys(was), ...[...form.keys()].filter((name) => !CONTROL.test(name))])
  const changes = [...names].flatMap((name) => {
    const is = form
      .getAll(name)
      .filter((value) => typeof value === 'string')
      .join('\n')
      .replace(/\r\n?/g, '\n')
    const before = was[name] ?? ''
    return is === before ? [] : [[name, { was: before, is }] as const]
  })
  return {
    id: control(':draft'),
    step: control(':step'),
    did: control(':do') || 'next',
    changes: Object.fromEntries(changes),
  }
}

/** What the page showed; a form that lost it is taken to have shown nothing, so that nothing is overwritten. */
function readWas(text: string): Readonly<Record<string, string>> {
  try {
    const parsed = wasSchema.safeParse(JSON.parse(text))
    return parsed.success ? parsed.data : {}
  } catch {
    return {}
  }
}
