import { compareTitles } from '../../_words/format.ts'
import type { Option } from '../field.tsx'
import type { BenchData } from './brought.ts'

/** The page's materials of some roles, by label, for a list to choose from. */
export const materialOptions = (data: BenchData, roles: readonly string[]): Option[] =>
  Object.entries(data.materials)
    .filter(([, { role }]) => roles.includes(role))
    .map(([value, { label }]) => ({ value, label }))
    .sort((a, b) => compareTitles(a.label, b.label))
