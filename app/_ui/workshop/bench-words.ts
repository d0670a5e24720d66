import { askedLanguage } from '#app/asked.ts'
import { type Messages, messagesOf } from '#app/catalogue.ts'

/** The part of the catalogue that a calculation page has to itself, under `workOut`. */
export type PageWords = {
  [K in keyof Messages['workOut']]: Messages['workOut'][K] extends { title: string; lead: string } ? K : never
}[keyof Messages['workOut']]

/** The words that travel with a calculation page: the frame's own, the page's, and those of figures. */
export function benchWords(page: PageWords): Partial<Messages> {
  const { common, faults, steps, terms, workOut } = messagesOf(askedLanguage())
  const frame = Object.fromEntries(
    Object.entries(workOut).filter(([name, part]) => name === page || !isPage(part)),
  )
  const brought = {
    common: {
      notice: common.notice,
      quantity: common.quantity,
      ratio: common.ratio,
      units: common.units,
    },
    faults: { field: faults.field },
    steps,
    terms: { basis: terms.basis, property: terms.property },
    workOut: frame,
  }
  // A browser asks for nothing else; what it would ask for in vain throws in the page's own test.
  return brought as unknown as Partial<Messages>
}

const isPage = (part: unknown): boolean => typeof part === 'object' && part !== null && 'lead' in part
