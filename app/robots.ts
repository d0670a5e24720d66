import type { MetadataRoute } from 'next'

/** Everything may be read; job sheets are endless variations of the same recipe and need no index. */
export default function robots(): MetadataRoute.Robots {
  return { rules: { userAgent: '*', allow: '/', disallow: ['/recipes/*/job', '/*/recipes/*/job', '/api/'] } }
}
