import type { Pair } from './pairs.ts'
import type { Content } from './types.ts'

/** Every text of content that has one in Spanish, by where it stands: `cautions/quicklime.body.1`. */
export function spanishOf({ cautions }: Content): readonly Pair[] {
  return [...cautions].flatMap(([id, caution]) => [
    { key: `cautions/${id}.title`, english: caution.title, spanish: caution.es.title },
    { key: `cautions/${id}.notice`, english: caution.notice, spanish: caution.es.notice },
    ...caution.body.map((english, i) => ({
      key: `cautions/${id}.body.${i + 1}`,
      english,
      spanish: caution.es.body[i] ?? '',
    })),
  ])
}
