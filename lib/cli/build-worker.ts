import { build } from 'esbuild'
import { WORKER } from './worker-file.ts'

/**
 * Bundles the worker into one file. The name of the build stands in it: a browser takes a worker that differs from the
 * one it has, and the files of a build are kept under its name.
 */
export async function buildWorker(name: string): Promise<void> {
  await build({
    entryPoints: ['app/_offline/worker.ts'],
    outfile: WORKER,
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2020',
    logLevel: 'silent',
    define: { 'process.env.NODE_ENV': '"production"', 'process.env.BUILD_NAME': JSON.stringify(name) },
  })
}
