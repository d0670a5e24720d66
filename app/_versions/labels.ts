import review from '../_words/en/review.json'
import { words } from '../_words/index.ts'

type LabelKey = keyof typeof review.label

/** What the forms of review call a field. */
export const reviewLabel = (field: string): string =>
  Object.hasOwn(review.label, field) ? words('review')(`label.${field as LabelKey}`) : field
