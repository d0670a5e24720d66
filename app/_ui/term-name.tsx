import type { Labels } from '#lib/content/types.ts'
import { inEnglish } from './as-written.ts'
import { nameOf, ownNames } from './label.ts'

/** What a thing is called, marked as English where content is sure of no name in the language of the page. */
export const Name = ({ label, labels }: { label: string; labels?: Labels | undefined }) =>
  ownNames(labels) === undefined ? <span {...inEnglish()}>{label}</span> : nameOf(label, labels)
