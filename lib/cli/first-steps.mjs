import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The folder of the project. */
export const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))))

/**
 * What to say when the running Node is older than package.json asks for; undefined when it will do.
 *
 * @param {string} found version of the running Node, such as 18.20.4
 * @param {string} needed range of package.json, such as >=20.19
 * @returns {string | undefined}
 */
export function nodeFault(found, needed) {
  const least = needed.replace('>=', '').split('.').map(Number)
  const have = found.split('.').map(Number)
  const at = (/** @type {number[]} */ version, /** @type {number} */ place) => version[place] || 0
  const differs = [0, 1, 2].find((place) => at(have, place) !== at(least, place))
  if (differs === undefined || at(have, differs) > at(least, differs)) return undefined
  return `This site needs Node ${needed.replace('>=', '')} or newer; this is Node ${found}. Install a newer Node from your system or from nodejs.org, then run the command again.`
}

/**
 * @typedef {{ packages: Record<string, { version?: string, integrity?: string, optional?: boolean }> }} Lock
 * Whether what is installed is what the lockfile says, by npm's own note of what it installed. Packages for other
 * platforms may be missing.
 *
 * @param {Lock} wanted package-lock.json
 * @param {Lock | undefined} installed node_modules/.package-lock.json
 * @returns {boolean}
 */
export function isInstalled(wanted, installed) {
  if (!installed) return false
  return Object.entries(wanted.packages).every(([path, { version, integrity, optional }]) => {
    if (path === '') return true
    const found = installed.packages[path]
    if (!found) return optional === true
    return found.version === version && (!integrity || !found.integrity || found.integrity === integrity)
  })
}

/**
 * Checks Node, installs what the lockfile names unless it is there, then hands over to the verb in TypeScript.
 *
 * @param {string[]} args the verb and its arguments
 */
export async function start(args) {
  const { engines } = readJson(join(root, 'package.json'))
  const fault = nodeFault(process.versions.node, engines.node)
  if (fault) return fail(fault)
  process.chdir(root)
  if (!install()) return fail('The packages could not be installed; npm says why above.')
  const { register } = await import('tsx/esm/api')
  register()
  const { main } = await import('./main.ts')
  process.exitCode = await main(args)
}

function install() {
  const noted = join(root, 'node_modules', '.package-lock.json')
  const wanted = readJson(join(root, 'package-lock.json'))
  if (isInstalled(wanted, existsSync(noted) ? readJson(noted) : undefined)) return true
  console.log('Installing packages')
  const began = Date.now()
  const npm = process.env.npm_execpath
  const command = [
    'ci',
    '--include=dev',
    '--ignore-scripts',
    '--prefer-offline',
    '--no-audit',
    '--no-fund',
    '--loglevel=error',
  ]
  const done = npm
    ? spawnSync(process.execPath, [npm, ...command], { stdio: 'inherit' })
    : spawnSync('npm', command, { stdio: 'inherit', shell: process.platform === 'win32' })
  if (done.status !== 0) return false
  console.log(`  done in ${((Date.now() - began) / 1000).toFixed(1)} s`)
  return true
}

/** @param {string} message */
function fail(message) {
  console.error(message)
  process.exitCode = 1
}

/** @param {string} file */
function readJson(file) {
  return JSON.parse(readFileSync(file, 'utf8'))
}
