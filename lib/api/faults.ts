import type { z } from 'zod'
import type { FieldFault } from '#lib/errors.ts'

type Issue = z.core.$ZodIssue

/**
 * What is wrong with a body or a query, field by field, in the codes that the words catalogue knows.
 *
 * @param issues as zod reports them
 * @param given what was parsed, to show each refused value again
 */
export function faultsOf(issues: readonly Issue[], given: unknown): FieldFault[] {
  return issues.flatMap(nearest).flatMap((issue) => {
    if (issue.code === 'unrecognized_keys')
      return issue.keys.map((key) => ({ field: fieldName([...issue.path, key]), code: 'unknown-field' }))
    const value = valueAt(given, issue.path)
    const fault: FieldFault = { field: fieldName(issue.path), code: codeOf(issue, value) }
    if (typeof value === 'number' || typeof value === 'string') fault.value = value
    const limit = limitOf(issue)
    if (limit !== undefined) fault.limit = limit
    if ('inclusive' in issue && issue.inclusive === false && fault.code !== 'not-positive')
      fault.exclusive = true
    return fault
  })
}

/** Of the alternatives of a union the one that what was given came nearest to: the one of its own kind. */
function nearest(issue: Issue): Issue[] {
  if (issue.code !== 'invalid_union') return [issue]
  const fitting = issue.errors.find((inner) =>
    inner.some(({ code, path }) => code !== 'invalid_type' || path.length > 0),
  )
  return fitting
    ? fitting.flatMap((inner) => nearest({ ...inner, path: [...issue.path, ...inner.path] }))
    : [issue]
}

const fieldName = (path: readonly PropertyKey[]) => path.map(String).join('.')

function valueAt(given: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (at, key) => (typeof at === 'object' && at !== null ? Reflect.get(at, key) : undefined),
    given,
  )
}

function codeOf(issue: Issue, value: unknown): string {
  switch (issue.code) {
    case 'invalid_type':
      if (value === undefined) return 'required'
      if (issue.expected === 'int' && typeof value === 'number') return 'not-whole'
      return issue.expected === 'number' || issue.expected === 'int' ? 'not-a-number' : 'wrong-type'
    case 'too_small':
      if (value === '') return 'empty'
      if (issue.origin === 'array') return 'too-few'
      if (issue.origin === 'string') return 'too-short'
      return issue.inclusive === false && issue.minimum === 0 ? 'not-positive' : 'too-small'
    case 'too_big':
      if (issue.origin === 'array') return 'too-many'
      return issue.origin === 'string' ? 'too-long' : 'too-large'
    case 'invalid_union':
      if (issue.errors.some((inner) => inner.some(wantsNumber)) && value !== undefined) return 'not-a-number'
      return value === undefined ? 'required' : 'unknown'
    case 'invalid_value':
      return value === undefined ? 'required' : 'unknown'
    case 'invalid_format':
      return /^[a-z-]+$/.test(issue.message) ? issue.message : 'wrong-format'
    case 'custom':
      return issue.message
    default:
      return 'wrong-type'
  }
}

const wantsNumber = (issue: Issue) => issue.code === 'invalid_type' && issue.expected === 'number'

function limitOf(issue: Issue): string | number | undefined {
  switch (issue.code) {
    case 'too_small':
      return Number(issue.minimum)
    case 'too_big':
      return Number(issue.maximum)
    case 'invalid_value':
      return issue.values.join(', ')
    default:
      return undefined
  }
}
