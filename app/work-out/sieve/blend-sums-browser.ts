import type { BlendSums } from './blend-sums.ts'

let sums: BlendSums | undefined
let coming: Promise<boolean> | undefined

/** @throws RangeError before {@link fetchBlendSums} said that they came */
export function blendSums(): BlendSums {
  if (!sums) throw new RangeError('the sums of a blend are not here yet')
  return sums
}

export const areBlendSumsHere = (): boolean => sums !== undefined

export function fetchBlendSums(): Promise<boolean> | undefined {
  coming ??= import('#lib/mortar/sieve-blend.ts').then(
    ({ blendSands }) => {
      sums = blendSands
      return true
    },
    // No signal, or a newer build that has the file no more: the site itself can be asked.
    () => false,
  )
  return coming
}
