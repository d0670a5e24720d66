import { words } from '../_words/index.ts'
import { addressWith } from './query.ts'

/** The way from a recipe, a stone, a family or a row to what happened to its walls. */
export const EvidenceLink = (props: {
  choices: Readonly<Record<string, string>>
  of?: 'walls' | 'family' | 'unit'
}) => (
  <p>
    <a className="touch" href={addressWith('/evidence', props.choices)}>
      {words('evidence')(`links.from.${props.of ?? 'walls'}`)}
    </a>
  </p>
)
