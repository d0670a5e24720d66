import type { NextConfig } from 'next'

const config: NextConfig = {
  poweredByHeader: false,
  reactStrictMode: true,
  devIndicators: false,
  // Types are checked by `npm test`; a server that only builds need not wait for that.
  typescript: { ignoreBuildErrors: true },
  // The database driver and the content reader are plain Node modules; bundling them gains nothing.
  serverExternalPackages: ['@prisma/client', '@prisma/adapter-pg', 'pg'],
}

export default config
