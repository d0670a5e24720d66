import type { NextConfig } from 'next'

const config: NextConfig = {
  poweredByHeader: false,
  reactStrictMode: true,
  devIndicators: false,
  // Types are checked by `npm test`; a server that only builds need not wait for that.
  typescript: { ignoreBuildErrors: true },
  // The database driver and the content reader are plain Node modules; bundling them gains nothing.
  serverExternalPackages: ['@prisma/client', '@prisma/adapter-pg', 'pg'],
  // The gate refuses bodies above 64 KiB; this only bounds what is held before it has looked.
  experimental: { proxyClientMaxBodySize: '128kb' },
  // Photos are stored in the widths that pages ask for. The framework's own resizer would keep copies, and hand them out
  // when a photo was withdrawn or erased.
  images: { unoptimized: true },
  // Titles and icons stand in the head of every page, also where no script could move them there.
  htmlLimitedBots: /.*/,
  // The library for matrices is packed into one file; of its sources a browser is sent only what a blend is solved with.
  turbopack: { resolveAlias: { 'ml-matrix': { browser: './node_modules/ml-matrix/src/index.js' } } },
  rewrites: async () => ({
    // Spanish pages are the same pages; the gate has told them the language by then. It can't lead there itself: with an
    // address of numbers to listen on, the framework would send the request out and in again.
    beforeFiles: [{ source: '/es/:path((?!api/|_next/).*)*', destination: '/:path*' }],
    // Browsers that find no icon in time, or show a bare file, ask for these names.
    afterFiles: [
      { source: '/favicon.ico', destination: '/icon.svg' },
      { source: '/apple-touch-icon.png', destination: '/icons/180.png' },
    ],
    fallback: [],
  }),
  // Files of the build pass by the gate, which sets the other headers.
  headers: async () => [
    { source: '/_next/static/:path*', headers: [{ key: 'X-Content-Type-Options', value: 'nosniff' }] },
  ],
}

export default config
