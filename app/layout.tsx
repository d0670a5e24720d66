import type { Metadata, Viewport } from 'next'
import { headers } from 'next/headers'
import type { ReactNode } from 'react'
import { askedLanguage } from '#app/asked.ts'
import { Offline } from './_offline/offline.tsx'
import { Course, HoleMark } from './_ui/drawings.tsx'
import { fontClasses } from './_ui/fonts.ts'
import { Landed } from './_ui/landed.tsx'
import { LanguageLink } from './_ui/language-link.tsx'
import { PAPER } from './_ui/theme.ts'
import { locale, words } from './_words/index.ts'
import { ADDRESS_HEADER } from './_words/languages.ts'
import './globals.css'

const t = words('common')

/** Each request is drawn anew: the security policy's nonce differs every time. */
export const dynamic = 'force-dynamic'

export const generateMetadata = (): Metadata => ({
  title: { default: t('site.name'), template: t('site.titleTemplate') },
  description: t('site.description'),
  applicationName: t('site.name'),
  formatDetection: { telephone: false, address: false, email: false },
})

export const viewport: Viewport = {
  colorScheme: 'light dark',
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: PAPER.light },
    { media: '(prefers-color-scheme: dark)', color: PAPER.dark },
  ],
}

const MAIN = ['find', 'recipes', 'cases', 'evidence', 'tables', 'work-out', 'record', 'account'] as const
const SMALL = [
  'like',
  'map',
  'guides',
  'glossary',
  'materials',
  'terms',
  'cautions',
  'sources',
  'method',
  'kept',
  'about',
] as const

/** The shell of every page. */
export default async function Layout({ children }: { children: ReactNode }) {
  const language = askedLanguage()
  const here = (await headers()).get(ADDRESS_HEADER) ?? '/'
  return (
    <html lang={locale()} className={fontClasses}>
      <body>
        <a className="skip" href="#main">
          {t('site.skip')}
        </a>
        <header className="masthead">
          <div className="leaf masthead-line">
            <a className="wordmark" href="/">
              <HoleMark />
              {t('site.name')}
            </a>
            <LanguageLink here={here} />
            <nav aria-label={t('site.nav')}>
              <Places places={MAIN} />
            </nav>
          </div>
          <Course id="course-head" />
        </header>
        {language !== 'en' && (
          <aside className="leaf translated" aria-label={t('translated.label')}>
            <p>{t('translated.text')}</p>
          </aside>
        )}
        <main id="main" className="leaf" tabIndex={-1}>
          {children}
        </main>
        <footer className="footer">
          <Course id="course-foot" />
          <div className="leaf footer-line">
            <nav aria-label={t('site.navSmall')}>
              <Places places={SMALL} />
            </nav>
            <p>{t('site.footer')}</p>
          </div>
        </footer>
        <Landed />
        <Offline />
      </body>
    </html>
  )
}

const Places = ({ places }: { places: readonly (typeof MAIN | typeof SMALL)[number][] }) => (
  <ul className="nav">
    {places.map((place) => (
      <li key={place}>
        <a href={`/${place}`}>{t(`places.${place}`)}</a>
      </li>
    ))}
  </ul>
)
