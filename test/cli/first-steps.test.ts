import { execFileSync } from 'node:child_process'
import { expect, it } from 'vitest'
import { isInstalled, nodeFault } from '#lib/cli/first-steps.mjs'

it.each(['20.19.0', '20.19.1', '20.20.2', '22.0.0', '24.1.0'])(
  'nodeFault(%s) has nothing to say',
  (version) => {
    expect(nodeFault(version, '>=20.19')).toBeUndefined()
  },
)

it.each(['12.22.12', '18.20.8', '20.9.0', '20.18.3'])(
  'nodeFault(%s) names the version found and the one needed',
  (version) => {
    expect(nodeFault(version, '>=20.19')).toMatch(
      new RegExp(`needs Node 20\\.19 or newer; this is Node ${version}\\.`),
    )
  },
)

it('start(…) says so and ends with code 1 when Node is too old, before it installs or loads anything', () => {
  const pretend = `Object.defineProperty(process.versions, 'node', { value: '18.20.8' })`
  const said = failing([
    '--import',
    `data:text/javascript,${encodeURIComponent(pretend)}`,
    'lib/cli/start.mjs',
    'serve',
  ])
  expect(said).toEqual({
    status: 1,
    stdout: '',
    stderr: expect.stringMatching(/^This site needs Node 20\.19 or newer; this is Node 18\.20\.8\./),
  })
})

it('start(…) names the commands when it is given another', () => {
  const said = failing(['lib/cli/start.mjs', 'dance'])
  expect(said.status).toBe(1)
  expect(said.stderr).toMatch(/^There is no command 'dance'\. The commands: serve, test,/)
})

function failing(args: string[]): { status: number; stdout: string; stderr: string } {
  try {
    execFileSync(process.execPath, args, { encoding: 'utf8', stdio: 'pipe' })
  } catch (error) {
    const { status, stdout, stderr } = error as { status: number; stdout: string; stderr: string }
    return { status, stdout, stderr }
  }
  throw new Error('it did not fail')
}

const wanted = {
  packages: {
    '': { version: '0.1.0' },
    'node_modules/a': { version: '1.0.0', integrity: 'sha512-a' },
    'node_modules/for-another-system': { version: '2.0.0', optional: true },
  },
}

it('isInstalled(wanted, installed) is content without the optional packages of other systems', () => {
  const a = { version: '1.0.0', integrity: 'sha512-a' }
  expect(isInstalled(wanted, { packages: { 'node_modules/a': a } })).toBe(true)
})

it.each([
  ['nothing is installed', undefined],
  ['a package is missing', { packages: {} }],
  ['a version differs', { packages: { 'node_modules/a': { version: '1.0.1' } } }],
  ['its content differs', { packages: { 'node_modules/a': { version: '1.0.0', integrity: 'sha512-b' } } }],
])('isInstalled(wanted, installed) is false when %s', (_, installed) => {
  expect(isInstalled(wanted, installed)).toBe(false)
})
