import { describe, expect, it } from 'vitest'
import { securityHeaders } from '../../app/_http/security.ts'

describe('securityHeaders(secure, allowed)', () => {
  const policy = (...allowed: ('camera' | 'geolocation')[]) =>
    securityHeaders(true, allowed)['Permissions-Policy']?.split(', ')

  it('asks the device for nothing', () => {
    expect(policy()?.every((part) => part.endsWith('=()'))).toBe(true)
    expect(policy()).toContain('camera=()')
  })

  it('lets a page ask for what it names, and for nothing else', () => {
    expect(policy('camera')).toContain('camera=(self)')
    expect(policy('camera')?.filter((part) => part.endsWith('=(self)'))).toHaveLength(1)
  })
})
