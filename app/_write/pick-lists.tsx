import { lookOf } from './look.ts'
import type { PickName } from './picks.ts'
import type { FormView } from './view.ts'

/** The lists that the fields of a step choose from, each once; other names show what they stand for. */
export function PickLists({ view, names }: { view: FormView; names: readonly string[] }) {
  const used = new Set<PickName>()
  for (const name of names) {
    const look = lookOf(view.tree, name)
    if (look.as === 'pick' || look.as === 'picks') used.add(look.from)
  }
  return [...used].map((from) => (
    <datalist key={from} id={`list-${from}`}>
      {view.picks[from].choices.flatMap(({ id, label, also = [] }) => [
        <option key={id} value={label} />,
        ...also
          .filter((name) => name !== label)
          .map((name) => <option key={`${id} ${name}`} value={name} label={label} />),
      ])}
    </datalist>
  ))
}
