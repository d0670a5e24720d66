import { createElement as create, type ElementType, type ReactNode } from 'react'
import { lead } from './lead.ts'

/** What the compiler calls instead of `jsx` where a key comes after spread attributes. */
export const createElement = (type: ElementType, props: object | null, ...inner: ReactNode[]) =>
  create(type, lead(type, props), ...inner)
