import { inLanguage } from '../../_words/language.ts'

/**
 * Where a plain form with photos is sent. The page to lead back to stands in the address: it and its language are known
 * then, however the form breaks off.
 *
 * @param back path of that page, without its language
 */
export const photosAddress = (back: string): string =>
  `/photos/add?${new URLSearchParams({ back: inLanguage(back) })}`
