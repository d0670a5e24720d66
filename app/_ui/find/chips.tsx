import { words } from '../../_words/index.ts'
import { type CasesAsked, type Choice, casesAddress, choicesOf, without } from './asked.ts'
import { facetLabel, facetName } from './labels.ts'

/** A choice in words: `Country: Estonia`. */
export function choiceLabel({ name, value }: Choice, titles: ReadonlyMap<string, string>): string {
  const t = words('find')
  if (name === 'minYears' || name === 'maxYears') return t(`years.${name}`, { years: Number(value) })
  return t('chip.named', { facet: facetName(name), value: facetLabel(name, value, titles) })
}

/** What narrows the list, each a link that leaves it out. */
export function Chips(props: { path: string; asked: CasesAsked; titles: ReadonlyMap<string, string> }) {
  const { path, asked, titles } = props
  const t = words('find')
  const choices = choicesOf(asked.filter)
  if (choices.length === 0 && asked.text === '') return null
  return (
    <nav className="chips" aria-label={t('chip.all')}>
      <ul>
        {asked.text !== '' && (
          <Chip
            href={casesAddress(path, { ...asked, text: '' })}
            label={t('chip.text', { text: asked.text })}
          />
        )}
        {choices.map((choice) => (
          <Chip
            key={`${choice.name} ${choice.value}`}
            href={casesAddress(path, {
              ...asked,
              filter: without(asked.filter, choice.name, choice.value),
            })}
            label={choiceLabel(choice, titles)}
          />
        ))}
        <li>
          <a className="touch" href={path}>
            {t('chip.clear')}
          </a>
        </li>
      </ul>
    </nav>
  )
}

const Chip = ({ href, label }: { href: string; label: string }) => (
  <li>
    <a className="chip" href={href} aria-label={words('find')('chip.drop', { label })}>
      {label}
      <svg viewBox="0 0 10 10" aria-hidden="true">
        <path d="M1,1l8,8M9,1l-8,8" />
      </svg>
    </a>
  </li>
)
