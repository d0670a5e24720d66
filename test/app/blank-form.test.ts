import { expect, it } from 'vitest'
import { bodyTree } from '#lib/entry/tree.ts'
import { isField } from '#lib/workflow/draft-fields.ts'
import { generic, LAYOUTS } from '../../app/_write/layout.ts'
import type { Part } from '../../app/_write/layouts/parts.ts'
import { namesOf } from '../../app/_write/step-names.ts'
import type { FormView } from '../../app/_write/view.ts'

const fieldsIn = (parts: readonly Part[], within = ''): string[] =>
  parts.flatMap((part) =>
    typeof part === 'string' ? [`${within}${part}`] : fieldsIn(part.parts, `${within}${part.list}.*.`),
  )

it.each(['visit', 'case', 'recipe', 'material', 'source', 'row'] as const)(
  'a blank form of a %s has room for every field of its steps, each name once, and a draft keeps them all',
  (kind) => {
    const view = { kind, tree: bodyTree(kind), typed: {}, blank: true } as unknown as FormView
    const steps = LAYOUTS[kind].filter(({ id }) => id !== 'photos')
    const names = steps.flatMap(({ parts }) => namesOf(view, parts, undefined))
    expect(new Set(names).size).toBe(names.length)
    expect(names.filter((name) => !isField(kind, name))).toEqual([])
    const room = new Set(names.map((name) => generic(name).replace(/\.\*$/, '')))
    expect(fieldsIn(steps.flatMap(({ parts }) => parts)).filter((field) => !room.has(field))).toEqual([])
  },
)
