import type { Labels } from '#lib/content/types.ts'
import { inEnglish } from './as-written.ts'
import { nameOf, ownNames } from './label.ts'
import { EnglishIn } from './written.tsx'

/** For an element with a name of content: one that it is sure of is ours; where there is none, the English one stands there. */
export const nameLang = (names: Labels | undefined): { lang?: 'en' } =>
  ownNames(names) === undefined ? inEnglish() : {}

interface Named {
  readonly label: string
  readonly labels?: Labels | undefined
}

/** What a thing is called, marked as English where content is sure of no name in the language of the page. */
export const Name = ({ label, labels }: Named) =>
  ownNames(labels) === undefined ? <span {...inEnglish()}>{label}</span> : nameOf(label, labels)

/** A sentence of ours around what a thing is called. */
export const NameIn = ({ say, label, labels }: Named & { readonly say: (name: string) => string }) =>
  ownNames(labels) === undefined ? <EnglishIn say={say}>{label}</EnglishIn> : say(nameOf(label, labels))
