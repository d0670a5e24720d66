import { draftFaults } from '#lib/workflow/draft-submit.ts'
import { fullLabel, numberIn, sentenceOf } from './labels.ts'
import { addressOf, freeAddress } from './proposals.ts'
import type { FormView } from './view.ts'

/** What stands against sending a draft beyond its own fields, in words: what it points at, an address that is taken. */
export async function pointingFaults(
  view: FormView,
): Promise<readonly { readonly name: string; readonly sentence: string }[]> {
  const { draft, kind, typed, read } = view
  const slug = await addressOf(view)
  const faults = await draftFaults(draft, { slug, body: read.body })
  const told = await Promise.all(
    faults.map(async (fault) => {
      const name = fault.field === 'entry.slug' ? fault.field : read.nameOf(fault.field)
      const near = fault.code === 'taken' ? await freeAddress(kind, slug) : undefined
      const named = near === undefined ? fault : { ...fault, code: 'slug-taken', limit: near }
      return { name, sentence: sentenceOf(named, fullLabel(name, numberIn(typed))) }
    }),
  )
  // What its own fields tell already is said once.
  return told.filter(({ name }) => !view.faults.some((fault) => fault.name === name))
}
