import type { z } from 'zod'
import type { FieldFault } from '#lib/errors.ts'

const CODES: Record<string, string> = {
  invalid_type: 'wrong-type',
  invalid_value: 'not-offered',
  invalid_format: 'wrong-form',
  too_small: 'too-small',
  too_big: 'too-large',
  unrecognized_keys: 'unknown-field',
}

/** What zod found, one fault per field in the words of our catalogue: our own refinements carry their code. */
export function faultsOf(error: z.ZodError): FieldFault[] {
  return error.issues.flatMap((issue): FieldFault[] => {
    const field = issue.path.join('.')
    if (issue.code === 'unrecognized_keys')
      return issue.keys.map((key) => ({
        field: field === '' ? key : `${field}.${key}`,
        code: 'unknown-field',
      }))
    if (issue.code === 'invalid_type' && issue.input === undefined) return [{ field, code: 'missing' }]
    if (isOurs(issue.message)) return [{ field, code: issue.message }]
    const limit = 'maximum' in issue ? issue.maximum : 'minimum' in issue ? issue.minimum : undefined
    const code = CODES[issue.code] ?? 'wrong-form'
    return [limit === undefined ? { field, code } : { field, code, limit: Number(limit) }]
  })
}

/** Our refinements say a hyphenated code; zod's own messages are sentences. */
const isOurs = (message: string) => /^[a-z]+(?:-[a-z]+)+$/.test(message)
