import { z } from 'zod'
import type { Changes } from '#lib/workflow/draft-fields.ts'
import type { Choice } from '#lib/workflow/draft-save.ts'

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

/**
 * A step as it was posted: what changed against what its page showed. A field that comes twice is a list. What the page
 * proposed in a blank field is nobody's text until it is sent, and an address not even then.
 */
export function readStep(form: FormData): PostedStep {
  const control = (name: string) => String(form.get(name) ?? '')
  const was = readWas(control(':was'))
  const proposed = readWas(control(':proposed'))
  const did = control(':do') || 'next'
  const names = new Set([...Object.keys(was), ...[...form.keys()].filter((name) => !CONTROL.test(name))])
  const changes = [...names].flatMap((name) => {
    const is = form
      .getAll(name)
      .filter((value) => typeof value === 'string')
      .join('\n')
      .replace(/\r\n?/g, '\n')
      // No key types it, and no database keeps it.
      .replaceAll('\0', '')
    const before = was[name] ?? ''
    const ours = before === '' && is === proposed[name] && (did !== 'send' || name === 'entry.slug')
    return is === before || ours ? [] : [[name, { was: before, is }] as const]
  })
  return {
    id: control(':draft'),
    step: control(':step'),
    did,
    changes: Object.fromEntries(changes),
  }
}

const seenSchema = z.record(z.string(), z.array(z.string()))

/**
 * What was chosen where text waited beside a field: what stands (`stands`), one of the texts that wait (by number), or
 * `all` of them, one after the other. With each goes what the page showed, the text that stood first.
 */
export function readChoices(form: FormData): Readonly<Record<string, Choice>> {
  const seen = readJson(seenSchema, String(form.get(':seen') ?? ''))
  const choices = Object.entries(seen).flatMap(([name, texts]) => {
    const chosen = String(form.get(name) ?? '')
    const text =
      chosen === 'all' ? joined(texts) : texts[chosen === 'stands' ? 0 : Number(chosen || 'NaN') + 1]
    return text === undefined ? [] : [[name, { text, seen: texts }] as const]
  })
  return Object.fromEntries(choices)
}

/** Texts one after the other. */
export const joined = (texts: readonly string[]): string => texts.filter((text) => text !== '').join('\n')

/** What the page showed; a form that lost it is taken to have shown nothing, so that nothing is overwritten. */
const readWas = (text: string) => readJson(wasSchema, text)

function readJson<T>(schema: z.ZodType<Record<string, T>>, text: string): Record<string, T> {
  try {
    const parsed = schema.safeParse(JSON.parse(text))
    return parsed.success ? parsed.data : {}
  } catch {
    return {}
  }
}
