import localFont from 'next/font/local'

/*
 * Besley, a Clarendon like those on Victorian handbooks' title pages, for heads; Source Serif 4 for all
 * that is read or counted. Both under the SIL Open Font License, from npm. The loader wants literals, so
 * the files and ranges are written out each time. What stands in while they come is in stand-ins.css. Heads take Besley
 * whenever it comes; text stays in its stand-in, where the font is not there at once, until the next page: a paragraph
 * that wraps otherwise would move all that stands below it.
 */
const head = localFont({
  src: '../../node_modules/@fontsource-variable/besley/files/besley-latin-wght-normal.woff2',
  variable: '--font-head',
  weight: '400 900',
  display: 'swap',
  adjustFontFallback: false,
})

const headExt = localFont({
  src: '../../node_modules/@fontsource-variable/besley/files/besley-latin-ext-wght-normal.woff2',
  variable: '--font-head-ext',
  weight: '400 900',
  display: 'swap',
  preload: false,
  adjustFontFallback: false,
  declarations: [{ prop: 'unicode-range', value: 'U+0100-02BA,U+02BD-02C5,U+1E00-1E9F' }],
})

const text = localFont({
  src: '../../node_modules/@fontsource-variable/source-serif-4/files/source-serif-4-latin-wght-normal.woff2',
  variable: '--font-text',
  weight: '200 900',
  display: 'optional',
  adjustFontFallback: false,
})

const textExt = localFont({
  src: '../../node_modules/@fontsource-variable/source-serif-4/files/source-serif-4-latin-ext-wght-normal.woff2',
  variable: '--font-text-ext',
  weight: '200 900',
  display: 'optional',
  preload: false,
  adjustFontFallback: false,
  declarations: [{ prop: 'unicode-range', value: 'U+0100-02BA,U+02BD-02C5,U+1E00-1E9F' }],
})

/** Slanted only where a title is cited; fetched by the pages that have one. */
const italic = localFont({
  src: '../../node_modules/@fontsource-variable/source-serif-4/files/source-serif-4-latin-wght-italic.woff2',
  variable: '--font-italic',
  weight: '200 900',
  style: 'italic',
  display: 'optional',
  preload: false,
  adjustFontFallback: false,
})

/** Class names that set the font variables of tokens.css on the root element. */
export const fontClasses = [head, headExt, text, textExt, italic].map((font) => font.variable).join(' ')
