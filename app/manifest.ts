import type { MetadataRoute } from 'next'
import { PAPER } from './_ui/theme.ts'
import { locale, words } from './_words/index.ts'

const icon = (width: number, purpose: 'any' | 'maskable') => ({
  src: `/icons/${width}.png`,
  sizes: `${width}x${width}`,
  type: 'image/png',
  purpose,
})

/** What a telephone is told when somebody puts the site on its home screen. */
export default function manifest(): MetadataRoute.Manifest {
  // Made when the site is built: the language of no request.
  const t = words('common', 'en')
  return {
    id: '/',
    name: t('site.name'),
    short_name: t('site.name'),
    description: t('site.description'),
    lang: locale('en'),
    start_url: '/',
    scope: '/',
    display: 'standalone',
    // Where it can be had, with the way back that a page on paper has too.
    display_override: ['minimal-ui', 'standalone'],
    background_color: PAPER.light,
    theme_color: PAPER.light,
    icons: [
      { src: '/icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
      ...([192, 512] as const).flatMap((width) => [icon(width, 'any'), icon(width, 'maskable')]),
    ],
    shortcuts: [
      { name: t('places.recipes'), url: '/recipes' },
      { name: t('places.work-out'), url: '/work-out' },
      { name: t('places.kept'), url: '/kept' },
    ],
  }
}
