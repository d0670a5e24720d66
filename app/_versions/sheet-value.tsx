import type { ReactNode } from 'react'
import { z } from 'zod'
import type { Json, Path } from '#lib/entry/json.ts'
import { workedOn } from '#lib/entry/worked-on.ts'
import { Figures, Sheet } from '../_kept/worked-on.tsx'
import { asWritten } from '../_ui/as-written.ts'
import { fieldLabel } from './field-name.ts'

/** Whatever names the sheet: it is not shown. */
const one = workedOn.extend({ sheet: z.string() })
const { figures } = one.shape

/** Kept sheets, one of them, or its figures, drawn as on a published page; undefined for any other value. */
export function sheetValue(path: Path, value: Json): ReactNode {
  if (path.at(-1) === 'sheets') return drawn(z.array(one).min(1), value, sheets)
  if (path.at(-2) === 'sheets') return drawn(one, value, (copy) => <Sheet copy={copy} />)
  if (path.at(-3) !== 'sheets' || path.at(-1) !== 'figures') return undefined
  return drawn(figures.min(1), value, (printed) => (
    <Figures label={fieldLabel(path)} figures={printed} {...asWritten()} />
  ))
}

/** Undefined where it is not what is drawn: nothing, or of another shape. */
function drawn<T>(schema: z.ZodType<T>, value: Json, draw: (read: T) => ReactNode): ReactNode {
  const { success, data } = schema.safeParse(value)
  return success ? draw(data) : undefined
}

const sheets = (copies: readonly z.infer<typeof one>[]) =>
  copies.map((copy) => <Sheet key={`${copy.sheet} ${copy.of ?? ''}`} copy={copy} />)

/** What is left out of a sheet in words: nobody reads it. */
export const isUnread = (path: Path): boolean =>
  path.at(-3) === 'sheets' && ['sheet', 'address'].includes(path.at(-1) ?? '')
