import { textsOf } from './guide-blocks.ts'
import type { Pair } from './pairs.ts'
import type { Caution, Content, Guide } from './types.ts'

/** Every text of content that has one in Spanish, by where it stands: `cautions/quicklime.body.1`. */
export const spanishOf = ({ cautions, guides }: Content): readonly Pair[] => [
  ...[...cautions.values()].flatMap(cautionPairs),
  ...[...guides.values()].flatMap(guidePairs),
]

const cautionPairs = ({ id, title, notice, body, es }: Caution): readonly Pair[] => [
  { key: `cautions/${id}.title`, english: title, spanish: es.title },
  { key: `cautions/${id}.notice`, english: notice, spanish: es.notice },
  ...body.map((english, i) => ({
    key: `cautions/${id}.body.${i + 1}`,
    english,
    spanish: es.body[i] ?? '',
  })),
]

/** Block by block, and item by item of a list. */
function guidePairs({ id, title, summary, blocks, es }: Guide): readonly Pair[] {
  const spanish = es.blocks.flatMap(textsOf)
  return [
    { key: `guides/${id}.title`, english: title, spanish: es.title },
    { key: `guides/${id}.summary`, english: summary, spanish: es.summary },
    ...blocks.flatMap(textsOf).map((english, i) => ({
      key: `guides/${id}.${i + 1}`,
      english,
      spanish: spanish[i] ?? '',
    })),
  ]
}
