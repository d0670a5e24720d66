import type { Term } from '#lib/content/types.ts'
import { Name } from '../../_ui/term-name.tsx'

/** Terms as nested lists, narrower ones under what they are a kind of. */
export function TermTree({ terms, under }: { terms: readonly Term[]; under?: string }) {
  const here = terms.filter(({ broader }) => broader === under)
  if (here.length === 0) return null
  return (
    <ul className="tree">
      {here.map(({ id, label, labels }) => (
        <li key={id}>
          <a href={`#${id}`}>
            <Name label={label} labels={labels} />
          </a>
          <TermTree terms={terms} under={id} />
        </li>
      ))}
    </ul>
  )
}
